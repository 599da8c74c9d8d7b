import { Temporal } from "temporal-polyfill";
import { daySpan } from "../../shared/edtf.ts";
import type { Hemisphere, Moment } from "../../shared/reading.ts";
import type { Edtf } from "../../shared/record.ts";
import { dayOf, type Period } from "./period.ts";
import { regionOf } from "./region.ts";

export type Prefer = "past" | "future";
export type TimeOptions = { readonly prefer?: Prefer; readonly anchor?: Edtf };

/** What times are resolved against. */
export type Reference = {
  readonly today: Temporal.PlainDate;
  readonly instant: Date;
  /** Minutes east of UTC when it was said. */
  readonly offsetMinutes: number;
  readonly now: Temporal.ZonedDateTime;
  readonly hemisphere: Hemisphere;
  /** ISO 3166 country, with the part of the country where its holidays differ: "US", "AU-VIC". */
  readonly region: string;
  readonly prefer: Prefer;
  readonly anchor: Period | undefined;
};

const anchorOf = (edtf: Edtf | undefined, hemisphere: Hemisphere): Period | undefined => {
  const span = edtf === undefined ? undefined : daySpan(edtf, hemisphere);
  if (span === undefined || edtf === undefined) return undefined;
  const last = span.to.subtract({ days: 1 });
  if (span.from.equals(last)) return dayOf(span.from);
  return { grain: "span", from: span.from, last, written: edtf.replace(/[~?%]/gu, ""), about: false };
};

/** Throws a RangeError when `said` is no ISO 8601 instant or `zone` no IANA zone. */
export const referenceOf = (moment: Moment, options: TimeOptions): Reference => {
  const zoned = Temporal.Instant.from(moment.said).toZonedDateTimeISO(moment.zone);
  return {
    today: zoned.toPlainDate(),
    instant: new Date(zoned.epochMilliseconds),
    offsetMinutes: zoned.offsetNanoseconds / 6e10,
    now: zoned,
    hemisphere: moment.hemisphere,
    region: regionOf(moment.zone),
    prefer: options.prefer ?? "past",
    anchor: anchorOf(options.anchor, moment.hemisphere),
  };
};
