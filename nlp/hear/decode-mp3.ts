import { MPEGDecoder } from "mpg123-decoder";
import { resample } from "./resample.ts";
import { mixDown, SampleStore } from "./samples.ts";
import { type Sound, type SoundFailure, type SoundLimits, soundOf, tooLong } from "./sound.ts";

const PART_BYTES = 65_536;

/** MPEG audio, layers I to III. Length is only known by decoding, so the limit is kept on the way. */
export const decodeMp3 = async (bytes: Uint8Array, limits: SoundLimits): Promise<Sound | SoundFailure> => {
  const decoder = new MPEGDecoder();
  await decoder.ready;
  const store = new SampleStore(bytes.length);
  let rate = 0;
  try {
    for (let at = 0; at < bytes.length; at += PART_BYTES) {
      const part = decoder.decode(bytes.subarray(at, at + PART_BYTES));
      if (part.samplesDecoded === 0) continue;
      rate = part.sampleRate;
      store.push(mixDown(part.channelData, part.samplesDecoded));
      const failure = tooLong(store.length / rate, limits);
      if (failure) return failure;
    }
  } catch {
    return { tag: "damaged" };
  } finally {
    decoder.free();
  }
  return rate === 0 ? { tag: "not-audio" } : soundOf(await resample(store.taken(), rate));
};
