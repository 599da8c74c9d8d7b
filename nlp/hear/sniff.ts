import type { SoundKind } from "./sound.ts";

const mark = (bytes: Uint8Array, at: number, text: string): boolean =>
  Array.from(text).every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

const MPEG_SYNC = 0xff;
/** The upper eleven bits of an MPEG audio frame are set, and neither version nor layer has its reserved value. */
const isMpegFrame = (bytes: Uint8Array): boolean => {
  const [first, second = 0, third = 0] = bytes;
  const version = (second >> 3) & 3;
  const layer = (second >> 1) & 3;
  const rate = third >> 4;
  return first === MPEG_SYNC && second >= 0xe0 && version !== 1 && layer !== 0 && rate !== 0 && rate !== 15;
};

const EBML = [0x1a, 0x45, 0xdf, 0xa3];

/** The container of a file by its first bytes; undefined when they are none that we know. */
export const soundKind = (bytes: Uint8Array): SoundKind | undefined => {
  if (mark(bytes, 0, "OggS")) return mark(bytes, 28, "OpusHead") ? "ogg-opus" : "ogg";
  if (mark(bytes, 0, "RIFF") && mark(bytes, 8, "WAVE")) return "wav";
  if (EBML.every((byte, i) => bytes[i] === byte)) return "webm";
  if (mark(bytes, 4, "ftyp")) return "mp4";
  if (mark(bytes, 0, "fLaC")) return "flac";
  if (mark(bytes, 0, "#!AMR")) return "amr";
  if (mark(bytes, 0, "ID3") || isMpegFrame(bytes)) return "mp3";
  return undefined;
};
