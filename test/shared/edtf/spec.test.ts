import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { boundsOf, parseEdtf, writeEdtf } from "../../../shared/edtf.ts";

/**
 * The example strings of the EDTF specification (Library of Congress, 4 February 2019,
 * https://www.loc.gov/standards/datetime/), levels 0 to 2, with the first and the last day that they may mean.
 * The days are worked out by hand from the meaning that the specification gives; seasons in the north.
 */
const EXAMPLES: readonly (readonly [text: string, from?: string | undefined, last?: string | undefined])[] = [
  ["1985-04-12", "1985-04-12", "1985-04-12"],
  ["1985-04", "1985-04-01", "1985-04-30"],
  ["1985", "1985-01-01", "1985-12-31"],
  ["1985-04-12T23:20:30", "1985-04-12", "1985-04-12"],
  ["1985-04-12T23:20:30Z", "1985-04-12", "1985-04-12"],
  ["1985-04-12T23:20:30-04", "1985-04-12", "1985-04-12"],
  ["1985-04-12T23:20:30+04:30", "1985-04-12", "1985-04-12"],
  ["1964/2008", "1964-01-01", "2008-12-31"],
  ["2004-06/2006-08", "2004-06-01", "2006-08-31"],
  ["2004-02-01/2005-02-08", "2004-02-01", "2005-02-08"],
  ["2004-02-01/2005-02", "2004-02-01", "2005-02-28"],
  ["2004-02-01/2005", "2004-02-01", "2005-12-31"],
  ["2005/2006-02", "2005-01-01", "2006-02-28"],
  ["Y170000002"],
  ["Y-170000002"],
  ["2001-21", "2001-03-01", "2001-05-31"],
  ["2001-22", "2001-06-01", "2001-08-31"],
  ["2001-23", "2001-09-01", "2001-11-30"],
  ["2001-24", "2001-12-01", "2002-02-28"],
  ["1984?", "1984-01-01", "1984-12-31"],
  ["2004-06~", "2004-06-01", "2004-06-30"],
  ["2004-06-11%", "2004-06-11", "2004-06-11"],
  ["201X", "2010-01-01", "2019-12-31"],
  ["20XX", "2000-01-01", "2099-12-31"],
  ["2004-XX", "2004-01-01", "2004-12-31"],
  ["1985-04-XX", "1985-04-01", "1985-04-30"],
  ["1985-XX-XX", "1985-01-01", "1985-12-31"],
  ["1985-04-12/..", "1985-04-12", undefined],
  ["1985-04/..", "1985-04-01", undefined],
  ["1985/..", "1985-01-01", undefined],
  ["../1985-04-12", undefined, "1985-04-12"],
  ["../1985-04", undefined, "1985-04-30"],
  ["../1985", undefined, "1985-12-31"],
  ["1985-04-12/", "1985-04-12", undefined],
  ["1985-04/", "1985-04-01", undefined],
  ["1985/", "1985-01-01", undefined],
  ["/1985-04-12", undefined, "1985-04-12"],
  ["/1985-04", undefined, "1985-04-30"],
  ["/1985", undefined, "1985-12-31"],
  ["-1985", "-001985-01-01", "-001985-12-31"],
  ["Y-17E7"],
  ["1950S2", "1900-01-01", "1999-12-31"],
  ["Y171010000S3"],
  ["Y3388E2S3"],
  ["2001-34", "2001-04-01", "2001-06-30"],
  ["2001-25", "2001-03-01", "2001-05-31"],
  ["2001-26", "2001-06-01", "2001-08-31"],
  ["2001-27", "2001-09-01", "2001-11-30"],
  ["2001-28", "2001-12-01", "2002-02-28"],
  ["2001-29", "2001-09-01", "2001-11-30"],
  ["2001-30", "2001-12-01", "2002-02-28"],
  ["2001-31", "2001-03-01", "2001-05-31"],
  ["2001-32", "2001-06-01", "2001-08-31"],
  ["2001-33", "2001-01-01", "2001-03-31"],
  ["2001-35", "2001-07-01", "2001-09-30"],
  ["2001-36", "2001-10-01", "2001-12-31"],
  ["2001-37", "2001-01-01", "2001-04-30"],
  ["2001-38", "2001-05-01", "2001-08-31"],
  ["2001-39", "2001-09-01", "2001-12-31"],
  ["2001-40", "2001-01-01", "2001-06-30"],
  ["2001-41", "2001-07-01", "2001-12-31"],
  ["[1667,1668,1670..1672]", "1667-01-01", "1672-12-31"],
  ["[..1760-12-03]", undefined, "1760-12-03"],
  ["[1760-12..]", "1760-12-01", undefined],
  ["[1760-01,1760-02,1760-12..]", "1760-01-01", undefined],
  ["[1667,1760-12]", "1667-01-01", "1760-12-31"],
  ["[..1984]", undefined, "1984-12-31"],
  ["{1667,1668,1670..1672}", "1667-01-01", "1672-12-31"],
  ["{1960,1961-12}", "1960-01-01", "1961-12-31"],
  ["{..1984}", undefined, "1984-12-31"],
  ["2004-06~-11", "2004-06-11", "2004-06-11"],
  ["2004?-06-11", "2004-06-11", "2004-06-11"],
  ["?2004-06-~11", "2004-06-11", "2004-06-11"],
  ["2004-%06-11", "2004-06-11", "2004-06-11"],
  ["156X-12-25", "1560-12-25", "1569-12-25"],
  ["15XX-12-25", "1500-12-25", "1599-12-25"],
  ["XXXX-12-XX", "0000-12-01", "9999-12-31"],
  ["1XXX-XX", "1000-01-01", "1999-12-31"],
  ["1XXX-12", "1000-12-01", "1999-12-31"],
  ["1984-1X", "1984-10-01", "1984-12-31"],
  ["2004-06-~01/2004-06-~20", "2004-06-01", "2004-06-20"],
  ["2004-06-XX/2004-07-03", "2004-06-01", "2004-07-03"],
];
const SPEC = "../shared/checks/time/edtf-spec-examples.json";
/** Years that lie beyond the calendar of Temporal. */
const BEYOND = new Set(["Y170000002", "Y-170000002", "Y-17E7", "Y171010000S3", "Y3388E2S3"]);

const read = (text: string) => {
  const parsed = parseEdtf(text);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.reason}`);
  return parsed.value;
};

describe("the examples of the EDTF specification", () => {
  it.each(EXAMPLES.map(([text]) => text))("%s is read and written back", (text) => {
    expect(writeEdtf(read(text))).toBe(text);
  });

  const inReach = EXAMPLES.filter(([text]) => !BEYOND.has(text));
  it.each(inReach.map(([text, from, last]) => ({ text, from, last })))(
    "$text covers $from to $last",
    (row) => {
      const { text, from, last } = row;
      const bounds = boundsOf(read(text), "north");
      expect(bounds?.from?.toString()).toBe(from);
      expect(bounds?.to?.subtract({ days: 1 }).toString()).toBe(last);
    },
  );

  it.each([...BEYOND])("%s has no bounds in the calendar", (text) => {
    expect(boundsOf(read(text), "north")).toBeUndefined();
  });

  it.skipIf(!existsSync(SPEC))("are all here (left out where ../shared/checks is absent)", () => {
    const { examples } = JSON.parse(readFileSync(SPEC, "utf8")) as { examples: { example: string }[] };
    const here = new Set(EXAMPLES.map(([text]) => text));
    expect(examples.map(({ example }) => example).filter((example) => !here.has(example))).toEqual([]);
    expect(examples).toHaveLength(83);
  });

  it("shifts the seasons 21 to 24 in the south, and only those", () => {
    const from = (text: string) => boundsOf(read(text), "south")?.from?.toString();
    expect(["2001-21", "2001-22", "2001-23", "2001-24", "2001-26", "2001-32"].map(from)).toEqual([
      "2001-09-01",
      "2001-12-01",
      "2001-03-01",
      "2001-06-01",
      "2001-06-01",
      "2001-06-01",
    ]);
  });
});
