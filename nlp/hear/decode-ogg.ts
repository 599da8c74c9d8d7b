import { type OggOpusDecodedAudio, OggOpusDecoder } from "ogg-opus-decoder";
import { surveyOgg } from "./ogg-pages.ts";
import { mixDown, SampleStore } from "./samples.ts";
import { SAMPLE_RATE, type Sound, type SoundFailure, soundOf } from "./sound.ts";

const PART_BYTES = 65_536;
/** The decoder conceals lost frames; a recording with more than this share of them is not worth hearing. */
const TOLERATED_LOSS = 0.1;
const FRAME_SECONDS = 0.02;

/** Ogg Opus, as phones send it. Decoded in parts: memory stays near the size of the samples. */
export const decodeOgg = async (bytes: Uint8Array): Promise<Sound | SoundFailure> => {
  const { seconds, broken, starts } = surveyOgg(bytes);
  if (broken) return { tag: "truncated", secondsLeft: seconds };
  const store = new SampleStore((seconds + 1) * SAMPLE_RATE);
  let errors = 0;
  for (const [i, start] of starts.entries()) {
    const lost = await decodeInto(store, bytes.subarray(start, starts[i + 1]));
    if (lost === undefined) return { tag: "damaged" };
    errors += lost;
  }
  const heard = store.length / SAMPLE_RATE;
  if (heard === 0) return { tag: "empty" };
  const lost = Math.max(errors * FRAME_SECONDS, seconds - heard);
  return lost > TOLERATED_LOSS * Math.max(seconds, heard) ? { tag: "damaged" } : soundOf(store.taken());
};

/** Decodes one stream; the library would repeat parts of several. The number of frames that could not be decoded; undefined when the stream is no Opus at all. */
const decodeInto = async (store: SampleStore, bytes: Uint8Array): Promise<number | undefined> => {
  // The option is honoured, and decoding is asynchronous, but the library's own types say neither.
  const options: object = { sampleRate: SAMPLE_RATE };
  const decoder = new OggOpusDecoder(options);
  await decoder.ready;
  let errors = 0;
  const keep = (part: OggOpusDecodedAudio): void => {
    errors += part.errors.length;
    if (part.samplesDecoded > 0) store.push(mixDown(part.channelData, part.samplesDecoded));
  };
  try {
    for (let at = 0; at < bytes.length; at += PART_BYTES)
      keep(await Promise.resolve(decoder.decode(bytes.subarray(at, at + PART_BYTES))));
    keep(await decoder.flush());
    return errors;
  } catch {
    return undefined;
  } finally {
    decoder.free();
  }
};
