/** What the page headers of an Ogg Opus file say (RFC 3533, RFC 7845). */
export type OggSurvey = {
  /** Playing time by the last granule position, at 48,000 a second, less the pre-skip. */
  readonly seconds: number;
  /** The file stops in the middle of a page, or some bytes between pages are no page. */
  readonly broken: boolean;
};

const HEADER_BYTES = 27;
const GRANULES_PER_SECOND = 48_000;
const PRE_SKIP_AT = 38;
const NO_PACKET_ENDS = 0xffff_ffff_ffff_ffffn;

const isPage = (view: DataView, at: number): boolean =>
  at + HEADER_BYTES <= view.byteLength && view.getUint32(at) === 0x4f676753;

const pageLength = (view: DataView, at: number): number => {
  const segments = view.getUint8(at + 26);
  if (at + HEADER_BYTES + segments > view.byteLength) return Number.POSITIVE_INFINITY;
  let length = HEADER_BYTES + segments;
  for (let i = 0; i < segments; i++) length += view.getUint8(at + HEADER_BYTES + i);
  return length;
};

/** Walks the pages from header to header without looking into them. */
export const surveyOgg = (bytes: Uint8Array): OggSurvey => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const preSkip = bytes.byteLength > PRE_SKIP_AT + 1 ? view.getUint16(PRE_SKIP_AT, true) : 0;
  let at = 0;
  let granule = 0;
  while (isPage(view, at)) {
    const length = pageLength(view, at);
    if (at + length > view.byteLength) break;
    const position = view.getBigUint64(at + 6, true);
    if (position !== NO_PACKET_ENDS) granule = Number(position);
    at += length;
  }
  return { seconds: Math.max(0, granule - preSkip) / GRANULES_PER_SECOND, broken: at !== view.byteLength };
};
