import { resample } from "./resample.ts";
import { type Riff, readRiff } from "./riff.ts";
import { mixDown } from "./samples.ts";
import { type Sound, type SoundFailure, soundOf } from "./sound.ts";

const UNFILLED = [0, 0xffff_ffff, 0x7fff_ffff];

type Reader = (view: DataView, at: number) => number;
const READERS: Readonly<Record<string, Reader>> = {
  "1/8": (view, at) => (view.getUint8(at) - 128) / 128,
  "1/16": (view, at) => view.getInt16(at, true) / 32_768,
  "1/24": (view, at) => (view.getInt16(at + 1, true) * 256 + view.getUint8(at)) / 8_388_608,
  "1/32": (view, at) => view.getInt32(at, true) / 2_147_483_648,
  "3/32": (view, at) => view.getFloat32(at, true),
  "3/64": (view, at) => view.getFloat64(at, true),
};

const deinterleave = (bytes: Uint8Array, riff: Riff, read: Reader, frames: number): Float32Array[] => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const width = riff.bits / 8;
  return Array.from({ length: riff.channels }, (_, channel) => {
    const samples = new Float32Array(frames);
    for (let i = 0; i < frames; i++)
      samples[i] = read(view, riff.dataAt + (i * riff.channels + channel) * width);
    return samples;
  });
};

/** Uncompressed WAVE of 8 to 32 bits or floats, at any rate. */
export const decodeWav = async (bytes: Uint8Array): Promise<Sound | SoundFailure> => {
  const riff = readRiff(bytes);
  if (riff === undefined) return { tag: "damaged" };
  const read = READERS[`${riff.format}/${riff.bits}`];
  if (read === undefined || riff.rate < 4000 || riff.channels < 1) return { tag: "unsupported", kind: "wav" };
  const there = bytes.length - riff.dataAt;
  const frameBytes = (riff.bits / 8) * riff.channels;
  if (riff.dataBytes > there && !UNFILLED.includes(riff.dataBytes))
    return { tag: "truncated", secondsLeft: there / frameBytes / riff.rate };
  const frames = Math.floor((UNFILLED.includes(riff.dataBytes) ? there : riff.dataBytes) / frameBytes);
  if (frames === 0) return { tag: "empty" };
  const mono = mixDown(deinterleave(bytes, riff, read, frames), frames);
  return soundOf(await resample(mono, riff.rate));
};

/** Playing time by the header. */
export const wavSeconds = (bytes: Uint8Array): number | null => {
  const riff = readRiff(bytes);
  if (riff === undefined || riff.rate === 0 || riff.channels === 0 || riff.bits === 0) return null;
  const there = bytes.length - riff.dataAt;
  const data = UNFILLED.includes(riff.dataBytes) ? there : Math.min(there, riff.dataBytes);
  return data / ((riff.bits / 8) * riff.channels * riff.rate);
};
