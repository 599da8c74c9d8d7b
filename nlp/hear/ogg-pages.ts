/** What the page headers of an Ogg Opus file say (RFC 3533, RFC 7845). */
export type OggSurvey = {
  /** Playing time by the last granule position, at 48,000 a second, less the pre-skip. */
  readonly seconds: number;
  /** The file stops in the middle of a page, or some bytes between pages are no page. */
  readonly broken: boolean;
  /** Where each stream begins: recorders that pause may put several behind each other. */
  readonly starts: readonly number[];
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

const FIRST_OF_STREAM = 2;
const preSkipAt = (view: DataView, page: number): number =>
  page + PRE_SKIP_AT + 2 <= view.byteLength ? view.getUint16(page + PRE_SKIP_AT, true) : 0;

/** Walks the pages from header to header without looking into them; streams one behind the other are added up. */
export const surveyOgg = (bytes: Uint8Array): OggSurvey => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const starts: number[] = [];
  let [at, before, skip, granule] = [0, 0, 0, 0];
  const played = (): number => before + Math.max(0, granule - skip);
  while (isPage(view, at)) {
    const length = pageLength(view, at);
    if (at + length > view.byteLength) break;
    if ((view.getUint8(at + 5) & FIRST_OF_STREAM) !== 0) {
      [before, skip, granule] = [played(), preSkipAt(view, at), 0];
      starts.push(at);
    }
    const position = view.getBigUint64(at + 6, true);
    if (position !== NO_PACKET_ENDS) granule = Number(position);
    at += length;
  }
  return { seconds: played() / GRANULES_PER_SECOND, broken: at !== view.byteLength, starts };
};
