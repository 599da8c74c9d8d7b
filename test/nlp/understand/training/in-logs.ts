import { read } from "../../../../nlp/read/index.ts";
import { comparePlaces } from "../../../../shared/memory/place.ts";
import type { Scene, Shown } from "../../../../shared/memory/scene.ts";
import type { Moment } from "../../../../shared/reading.ts";
import type { RecordFields } from "../../../../shared/record.ts";
import type { Block, Later } from "../../../gold/older.ts";
import type { Expected, Talk, Turn } from "../../../gold/talk.ts";
import type { KnownRecord } from "../../read/training/notes.ts";
import { asksOf, ofTurn } from "./asked-for.ts";
import type { KnownMessage, MessageClass } from "./known.ts";
import { Met } from "./met.ts";

/** All records that a message may be about. */
const inScene = ({ last, older, spokenOf }: Scene): readonly Shown[] => [
  ...new Map([...older, ...spokenOf, ...(last?.records ?? [])].map((each) => [each.id, each])).values(),
];

/**
 * The record that a correction is about: the one that has its component and work; where one of them was put right, the
 * one told of last that has the other.
 */
const putRightIn = (scene: Scene, fixed: Expected | undefined): RecordFields | undefined => {
  if (fixed === undefined) return undefined;
  const has = (field: "component" | "action", { fields }: Shown): boolean => fields[field] === fixed[field];
  const alike = inScene(scene).filter((each) => has("component", each) && has("action", each));
  const near = (scene.last?.records ?? []).filter((each) => has("component", each) || has("action", each));
  const [only, ...others] = alike.length > 0 ? alike : near;
  return others.length > 0 ? undefined : only?.fields;
};

/** A note that tells of work on a thing told of before, and makes no record: how that work does. */
const isWord = (text: string, moment: Moment, told: readonly Shown[]): boolean => {
  const things = new Set(told.map(({ fields }) => fields.component));
  return read(text, moment).records.some(({ fields }) => things.has(fields.component));
};

/** The one record that a note tells and nothing else, by when it was told and in what words. */
export type ToldAlone = ReadonlyMap<string, KnownRecord>;
export const toldAs = (at: string, text: string): string => `${at} ${text}`;

/** The work that a verdict or a second go is on: the newest on its thing, at its place where it names one. */
const workOf = (next: KnownRecord | undefined, told: readonly Shown[]): RecordFields | undefined => {
  const works = told
    .map(({ fields }) => fields)
    .filter(({ kind, component }) => kind === "repair" && component === next?.component);
  const where = next?.where ?? null;
  return works.find((work) => where !== null && comparePlaces(where, work.where) === "same") ?? works[0];
};

const classOf = ({ text, expect }: Turn, moment: Moment, told: readonly Shown[]): MessageClass => {
  if (expect?.answer !== undefined) return "question";
  if (expect?.fixed !== undefined) return "correction";
  if (expect?.removed === true) return "removal";
  return expect?.records === 0 && isWord(text, moment, told) ? "word" : "";
};

const fromTurn = (turn: Turn, moment: Moment, met: Met, alone: ToldAlone): KnownMessage => {
  const { at, text, expect, ask, of } = turn;
  const [scene, told] = [met.sceneFor(turn), met.told()];
  const next = expect === undefined ? alone.get(toldAs(at, text)) : undefined;
  const work = workOf(next, told);
  const is = work === undefined || next?.kind === "repair" ? classOf(turn, moment, told) : "word";
  const asks = ask === undefined ? undefined : asksOf({ text, ask, ...ofTurn(ask, expect?.answer, of) });
  const about = is === "correction" ? putRightIn(scene, expect?.fixed) : work;
  return {
    text,
    moment,
    scene,
    told,
    ofOneLog: true,
    never: expect?.answer?.verdict === "no" && expect.answer.component === undefined,
    is,
    ...(about === undefined ? {} : { about }),
    ...(asks === undefined ? {} : { asks }),
    ...(typeof expect?.answer?.component === "string" ? { component: expect.answer.component } : {}),
    ...(expect?.fixed === undefined ? {} : { fixed: expect.fixed }),
  };
};

/** The messages of a conversation, each with what it is heard against when the conversation is played. */
export const fromTalk = async (talk: Talk, alone: ToldAlone): Promise<readonly KnownMessage[]> => {
  const { zone, hemisphere } = talk;
  const met = new Met(talk);
  const known: KnownMessage[] = [];
  for (const turn of talk.turns) {
    known.push(fromTurn(turn, { said: turn.at, zone, hemisphere }, met, alone));
    await met.tell(turn);
  }
  met.close();
  return known;
};

/** What a message said long after is, and whether it is known which record it is about. */
const laterClass = ({ is, records }: Later): { readonly is: MessageClass; readonly isAbout: boolean } => ({
  is: is === "other" ? "" : is !== "note" ? is : records === 0 ? "word" : "",
  isAbout: is !== "question" && (records === undefined || records === 0),
});

/** The messages of a block, each with what it is heard against when all of its notes are played. */
export const fromBlock = async (block: Block): Promise<readonly KnownMessage[]> => {
  const { zone, hemisphere } = block;
  const met = new Met(block);
  for (const note of block.told) await met.tell(note);
  const known = block.later.map((later): KnownMessage => {
    const [scene, told] = [met.sceneFor(later), met.told()];
    const { is, isAbout } = laterClass(later);
    const note = later.of === undefined ? undefined : block.told[later.of]?.text;
    const about = isAbout ? told.findLast(({ words }) => words === note)?.fields : undefined;
    return {
      text: later.text,
      moment: { said: later.at, zone, hemisphere },
      scene,
      told,
      is,
      ...(about === undefined ? {} : { about }),
      ...(later.fixed === undefined ? {} : { fixed: later.fixed }),
    };
  });
  met.close();
  return known;
};
