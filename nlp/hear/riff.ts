/** The `fmt ` and `data` chunks of a RIFF/WAVE file (IBM and Microsoft, Multimedia Programming Interface, 1991). */
export type Riff = {
  /** 1 = whole numbers, 3 = IEEE floats. */
  readonly format: number;
  readonly channels: number;
  readonly rate: number;
  readonly bits: number;
  readonly dataAt: number;
  /** As written in the file; may be more than there is, or 0 or 2³²−1 when the writer never came back to fill it in. */
  readonly dataBytes: number;
};

const EXTENSIBLE = 0xfffe;
const fourCc = (view: DataView, at: number): string =>
  String.fromCharCode(view.getUint8(at), view.getUint8(at + 1), view.getUint8(at + 2), view.getUint8(at + 3));

type Format = Pick<Riff, "format" | "channels" | "rate" | "bits">;
const readFormat = (view: DataView, at: number, size: number): Format => {
  const tag = view.getUint16(at, true);
  const format = tag === EXTENSIBLE && size >= 26 ? view.getUint16(at + 24, true) : tag;
  return {
    format,
    channels: view.getUint16(at + 2, true),
    rate: view.getUint32(at + 4, true),
    bits: view.getUint16(at + 14, true),
  };
};

export const readRiff = (bytes: Uint8Array): Riff | undefined => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let format: Format | undefined;
  for (let at = 12; at + 8 <= view.byteLength; ) {
    const size = view.getUint32(at + 4, true);
    const name = fourCc(view, at);
    if (name === "fmt " && at + 24 <= view.byteLength) format = readFormat(view, at + 8, size);
    if (name === "data") return format && { ...format, dataAt: at + 8, dataBytes: size };
    at += 8 + size + (size % 2);
  }
  return undefined;
};
