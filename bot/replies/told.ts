import { sayDate } from "../../shared/edtf.ts";
import { putsIn } from "../../shared/memory/work.ts";
import { cautionFor } from "../../shared/outlook/index.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { Button } from "../conversation/buttons.ts";
import { doubtsOf } from "../conversation/doubts.ts";
import type { Saved } from "../conversation/save-plan.ts";
import type { Told } from "../conversation/told.ts";
import type { Turn } from "../conversation/turn.ts";
import { lookAhead } from "./look-words.ts";
import { numbered } from "./numbered.ts";
import { lineContext, recordLine, thingName } from "./record-line.ts";
import { backwardsLine, usageLines } from "./usage-line.ts";
import { doneWord } from "./words.ts";

type Line = { readonly text: string; readonly buttons: readonly (readonly Button[])[] };

const once = (saved: readonly Saved[]): readonly Saved[] =>
  saved.filter((each, index) => saved.findIndex(({ record }) => record === each.record) === index);

const LEAD = { new: "", "word-on-old": "Added to what I had. ", retold: "I have that one. " } as const;

const settling = (record: number, label: string): readonly Button[] => [
  { label: `${label}is right`, tap: { tap: "right", record } },
  { label: `${label}is wrong`, tap: { tap: "wrong", record } },
];

const savedLine = (turn: Turn, each: Saved, label: string): Line[] => {
  const record = turn.store.history.record(each.record);
  if (record === undefined) return [];
  const doubts = each.how === "new" ? doubtsOf(each.draft) : [];
  const line = recordLine(record, lineContext(turn, doubts));
  const text = `${LEAD[each.how]}${line}${lookAhead(turn, record)}`;
  return [{ text, buttons: doubts.length === 0 ? [] : [settling(each.record, label)] }];
};

const whichOne = (turn: Turn, told: Told): Line[] => {
  const unclear = told.saved.find((each) => each.unclear !== null);
  if (unclear?.unclear == null) return [];
  const candidates = unclear.unclear.candidates.flatMap((id) => turn.store.history.record(id) ?? []);
  const buttons = candidates.map((record): readonly Button[] => [
    { label: pickLabel(turn, record), tap: { tap: "pick", record: record.id } },
  ]);
  return [
    {
      text: `Is that one of these, or new work? I have kept it as new for now.`,
      buttons: [...buttons, [{ label: "New work", tap: { tap: "pick", record: unclear.record } }]],
    },
  ];
};

/** Letters that a button shows. */
const LONGEST_LABEL = 48;

/** A record as short as fits on a button. */
export const pickLabel = (turn: Turn, record: Parameters<typeof recordLine>[0]): string => {
  const words = recordLine(record, lineContext(turn));
  if (words.length <= LONGEST_LABEL) return words.replace(/\.$/, "");
  const { fields } = record;
  const done = fields.action === null ? "" : `: ${doneWord(fields.action)}`;
  const date = fields.date === null ? "" : `, ${sayDate(fields.date, turn.today, turn.rig.hemisphere)}`;
  return `${thingName(fields)}${done}${date}`;
};

/** The usual caution for the first work that calls for one, unless this chat has seen it in the last days. */
const caution = (turn: Turn, told: Told): string | undefined => {
  for (const { draft, how } of told.saved) {
    const { component, action, materials, kind } = draft.fields;
    if (how !== "new" || kind === "check" || isPurchase(draft.fields)) continue;
    const text = told.note.text.slice(draft.span.start, draft.span.end);
    const words = cautionFor({ component, action, materials, text });
    if (words !== null) return turn.saidLately(words) ? undefined : words;
  }
  return undefined;
};

const isPurchase = ({ kind, action }: RecordFields): boolean => kind === "todo" && putsIn(action);

/** What else is to be said on a note: when it is through, and what it calls for. */
type Beside = { readonly cure: string | undefined; readonly after: string | undefined };

const NOTHING_READ = "Kept your words. I found no work or use of the rig in them.";

/** What a note made, as short numbered records, what is doubted marked, and an undo. */
export const toldReply = (
  turn: Turn,
  told: Told,
  { cure, after }: Beside,
): { text: string; buttons: readonly (readonly Button[])[] } => {
  const saved = once(told.saved);
  const several = saved.length > 1;
  const records = saved.flatMap((each, index) => savedLine(turn, each, several ? `${index + 1} ` : "This "));
  const use = usageLines(
    turn,
    told.usage.map(({ draft }) => draft.usage),
  );
  if (records.length === 0 && use.length === 0)
    return { text: after === undefined ? NOTHING_READ : `Noted. ${after}`, buttons: [] };
  const which = whichOne(turn, told);
  const blocks = [
    numbered(records.map(({ text }) => text)),
    ...use,
    ...told.backwards.map((entry) => backwardsLine(turn, entry)),
    cure,
    after,
    caution(turn, told),
    ...which.map(({ text }) => text),
  ];
  return {
    text: blocks.filter((block) => block !== undefined && block !== "").join("\n\n"),
    buttons: [
      ...records.flatMap(({ buttons }) => buttons),
      ...which.flatMap(({ buttons }) => buttons),
      [{ label: "Undo", tap: { tap: "undo", turn: turn.turnId } }],
    ],
  };
};
