import type { EdtfDate, EdtfEnd, EdtfRange, EdtfValue, Part } from "./model.ts";

const marksOf = (parts: readonly Part[]): readonly string[] => parts.map(({ qualifier }) => qualifier ?? "");

/** How many leading parts share one mark while the others bear none; 0 when the marks lie otherwise. */
const marked = (marks: readonly string[]): number => {
  const first = marks[0] ?? "";
  const count = marks.findIndex((mark) => mark !== first);
  if (first === "") return 0;
  if (count < 0) return marks.length;
  return marks.slice(count).every((mark) => mark === "") ? count : 0;
};

const dateText = ({ year, month, day, time, significant }: EdtfDate): string => {
  const parts = [year, month, day].filter((part) => part !== undefined);
  const marks = marksOf(parts);
  const group = marked(marks);
  const texts = parts.map(({ text }, i) => {
    const body = i === 0 && significant !== undefined ? `${text}S${significant}` : text;
    if (group === 0) return `${marks[i] ?? ""}${body}`;
    return i === group - 1 ? `${body}${marks[0] ?? ""}` : body;
  });
  return `${texts.join("-")}${time === undefined ? "" : `T${time}`}`;
};

const endText = (end: EdtfEnd): string => {
  if (end.kind === "date") return dateText(end);
  return end.kind === "open" ? ".." : "";
};
const memberText = (member: EdtfDate | EdtfRange): string => {
  if (member.kind === "date") return dateText(member);
  const [start, end] = [member.start, member.end].map((one) => (one.kind === "open" ? "" : endText(one)));
  return `${start ?? ""}..${end ?? ""}`;
};

/** The value as an EDTF string; `parseEdtf` reads it back. */
export const writeEdtf = (value: EdtfValue): string => {
  if (value.kind === "date") return dateText(value);
  if (value.kind === "interval") return `${endText(value.start)}/${endText(value.end)}`;
  const members = value.members.map(memberText).join(",");
  return value.all ? `{${members}}` : `[${members}]`;
};
