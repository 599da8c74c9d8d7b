import { readFile, stat } from "node:fs/promises";
import { containerSeconds, decodeContainer } from "./decode-container.ts";
import { decodeElsewhere } from "./decode-elsewhere.ts";
import { decodeMp3 } from "./decode-mp3.ts";
import { decodeOgg } from "./decode-ogg.ts";
import { decodeWav, wavSeconds } from "./decode-wav.ts";
import { surveyOgg } from "./ogg-pages.ts";
import { soundKind } from "./sniff.ts";
import {
  SOUND_LIMITS,
  type Sound,
  type SoundFailure,
  type SoundHeader,
  type SoundKind,
  type SoundLimits,
  tooLarge,
  tooLong,
} from "./sound.ts";

const secondsOf = async (bytes: Uint8Array, kind: SoundKind): Promise<number | null> => {
  if (kind === "ogg-opus") return surveyOgg(bytes).seconds;
  if (kind === "wav") return wavSeconds(bytes);
  if (kind === "webm" || kind === "mp4") return containerSeconds(bytes);
  return null;
};

/** What a file is and how long it plays, told from its headers in milliseconds; the limits are kept here already. */
export const probeSound = async (
  bytes: Uint8Array,
  limits: SoundLimits = SOUND_LIMITS,
): Promise<SoundHeader | SoundFailure> => {
  if (bytes.length === 0) return { tag: "empty" };
  const failure = tooLarge(bytes.length, limits);
  if (failure) return failure;
  const kind = soundKind(bytes);
  if (kind === undefined) return { tag: "not-audio" };
  const seconds = await secondsOf(bytes, kind);
  return tooLong(seconds ?? 0, limits) ?? { tag: "header", kind, seconds };
};

/** Any sound file to mono samples at 16,000 a second. Never throws. */
export const decodeSound = async (
  bytes: Uint8Array,
  limits: SoundLimits = SOUND_LIMITS,
): Promise<Sound | SoundFailure> => {
  const header = await probeSound(bytes, limits);
  if (header.tag !== "header") return header;
  switch (header.kind) {
    case "ogg-opus":
      return decodeOgg(bytes);
    case "wav":
      return decodeWav(bytes);
    case "mp3":
      return decodeMp3(bytes, limits);
    case "webm":
    case "mp4":
      return decodeContainer(bytes, header.kind, limits);
    case "ogg":
    case "flac":
    case "amr":
      return { tag: "unsupported", kind: header.kind };
  }
};

/** As `decodeSound`; what we cannot decode ourselves goes to `ffmpeg` where the machine has one. */
export const decodeSoundFile = async (
  path: string,
  limits: SoundLimits = SOUND_LIMITS,
): Promise<Sound | SoundFailure> => {
  const failure = tooLarge((await stat(path)).size, limits);
  if (failure) return failure;
  const sound = await decodeSound(await readFile(path), limits);
  return sound.tag === "unsupported" ? decodeElsewhere(path, sound.kind, limits) : sound;
};
