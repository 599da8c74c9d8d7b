/** Containers that we can tell apart by their first bytes. */
export type SoundKind = "ogg-opus" | "wav" | "mp3" | "webm" | "mp4" | "ogg" | "flac" | "amr";

/** Mono samples between -1 and 1 at `SAMPLE_RATE`. */
export type Sound = { readonly tag: "sound"; readonly samples: Float32Array; readonly seconds: number };

/** What can be told from the headers alone, without decoding. */
export type SoundHeader = {
  readonly tag: "header";
  readonly kind: SoundKind;
  /** Null when the container does not say. */
  readonly seconds: number | null;
};

/** Why a file gives no sound. Every case is worth one sentence to the sender; the file itself is kept. */
export type SoundFailure =
  | { readonly tag: "empty" }
  | { readonly tag: "too-large"; readonly megabytes: number; readonly limitMegabytes: number }
  | { readonly tag: "too-long"; readonly minutes: number; readonly limitMinutes: number }
  | { readonly tag: "not-audio" }
  | { readonly tag: "unsupported"; readonly kind: SoundKind }
  | { readonly tag: "truncated"; readonly secondsLeft: number }
  | { readonly tag: "damaged" };

/** Samples, or why there are none. */
export type Decoded = Promise<Sound | SoundFailure>;

export type SoundLimits = { readonly maxMinutes: number; readonly maxMegabytes: number };

/** What the recogniser takes. */
export const SAMPLE_RATE = 16_000;
export const SOUND_LIMITS: SoundLimits = { maxMinutes: 30, maxMegabytes: 20 };

export const soundOf = (samples: Float32Array): Sound => ({
  tag: "sound",
  samples,
  seconds: samples.length / SAMPLE_RATE,
});

export const tooLarge = (bytes: number, limits: SoundLimits): SoundFailure | undefined =>
  bytes > limits.maxMegabytes * 1e6
    ? { tag: "too-large", megabytes: bytes / 1e6, limitMegabytes: limits.maxMegabytes }
    : undefined;

export const tooLong = (seconds: number, limits: SoundLimits): SoundFailure | undefined =>
  seconds > limits.maxMinutes * 60
    ? { tag: "too-long", minutes: seconds / 60, limitMinutes: limits.maxMinutes }
    : undefined;
