import { ALL_FORMATS, BufferSource, EncodedPacketSink, Input, type InputAudioTrack } from "mediabunny";
import { OpusDecoder } from "opus-decoder";
import { mixDown, SampleStore } from "./samples.ts";
import { type Decoded, SAMPLE_RATE, type SoundKind, type SoundLimits, soundOf, tooLong } from "./sound.ts";

const PRE_SKIP_AT = 10;
const preSkipOf = (head: Uint8Array): number =>
  Math.round(((head[PRE_SKIP_AT] ?? 0) + (head[PRE_SKIP_AT + 1] ?? 0) * 256) / (48_000 / SAMPLE_RATE));

const opened = (bytes: Uint8Array): Input =>
  new Input({ source: new BufferSource(bytes), formats: ALL_FORMATS });

/** Playing time of a WebM or MP4 file; null when it holds no audio or does not say. */
export const containerSeconds = async (bytes: Uint8Array): Promise<number | null> => {
  const input = opened(bytes);
  try {
    return (await input.getPrimaryAudioTrack()) === null ? null : await input.computeDuration();
  } catch {
    return null;
  } finally {
    input.dispose();
  }
};

const decodeOpusTrack = async (track: InputAudioTrack): Promise<SampleStore> => {
  const config = await track.getDecoderConfig();
  const head = new Uint8Array(config?.description instanceof Uint8Array ? config.description : []);
  const decoder = new OpusDecoder({
    sampleRate: SAMPLE_RATE,
    channels: await track.getNumberOfChannels(),
    preSkip: preSkipOf(head),
  });
  await decoder.ready;
  const store = new SampleStore((await track.computeDuration()) * SAMPLE_RATE + SAMPLE_RATE);
  try {
    for await (const packet of new EncodedPacketSink(track).packets()) {
      const part = decoder.decodeFrame(packet.data);
      store.push(mixDown(part.channelData, part.samplesDecoded));
    }
  } finally {
    decoder.free();
  }
  return store;
};

/** WebM and MP4 as browsers record them, when the track inside is Opus; any other track is unsupported here. */
export const decodeContainer = async (bytes: Uint8Array, kind: SoundKind, limits: SoundLimits): Decoded => {
  const input = opened(bytes);
  try {
    const track = await input.getPrimaryAudioTrack();
    if (track === null) return { tag: "not-audio" };
    const failure = tooLong(await track.computeDuration(), limits);
    if (failure) return failure;
    if ((await track.getCodec()) !== "opus") return { tag: "unsupported", kind };
    const store = await decodeOpusTrack(track);
    return store.length === 0 ? { tag: "damaged" } : soundOf(store.taken());
  } catch {
    return { tag: "damaged" };
  } finally {
    input.dispose();
  }
};
