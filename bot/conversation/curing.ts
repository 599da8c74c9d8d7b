import { Temporal } from "temporal-polyfill";
import { findTemperature } from "../../nlp/temperature.ts";
import type { KeptRecord } from "../../shared/history.ts";
import { cureOf, type Ready, readyAgain } from "../../shared/outlook/index.ts";
import { consequenceOf } from "../../shared/vocabulary.ts";
import { planLooks } from "../nudges/plan-looks.ts";
import { sayDay } from "../replies/look-words.ts";
import { thingName } from "../replies/record-line.ts";
import { usualDegrees } from "../rig/degrees.ts";
import { waitFor } from "./pending.ts";
import type { Told } from "./told.ts";
import type { Turn } from "./turn.ts";

const curingMaterial = ({ fields }: KeptRecord): string | undefined =>
  fields.kind === "repair" ? fields.materials.find((material) => cureOf(material) !== undefined) : undefined;

/** What was put on today and is not through yet. */
const freshCure = (turn: Turn, told: Told): { record: KeptRecord; material: string } | undefined => {
  for (const { record: id, how } of told.saved) {
    const record = how === "new" ? turn.store.history.record(id) : undefined;
    const material = record === undefined ? undefined : curingMaterial(record);
    if (record === undefined || material === undefined || record.fields.date !== turn.today.toString())
      continue;
    if (record.fields.outcome === "untested") return { record, material };
  }
  return undefined;
};

/** Plans the notice and says how long it takes. */
export const planReady = (turn: Turn, record: KeptRecord, tempC: number): string | undefined => {
  const material = curingMaterial(record);
  if (material === undefined) return undefined;
  const applied = Temporal.Instant.from(record.saidAt).toZonedDateTimeISO(turn.rig.zone);
  const ready = readyAgain({ material, applied, tempC });
  if (ready === undefined) return undefined;
  if (ready.tooCold) return ready.explain;
  const { at, may } = servesFrom(record, ready);
  turn.store.readiness.plan({
    recordId: record.id,
    at: at.toInstant().toString(),
    words: `${thingName(record.fields)}: by rule of thumb ${ready.material} may ${may} by now. Check it against the product's own sheet before you trust it.`,
  });
  planLooks(turn, [record.id]);
  return `${ready.explain} I'll tell you when it's through, about ${sayDay(at.toPlainDate(), turn.today)}.`;
};

/** What keeps water in or out must stay dry until it is through; the rest only has to carry. */
const servesFrom = ({ fields }: KeptRecord, { load, wet }: Ready) => {
  if (consequenceOf(fields.component) !== "water") return { at: load, may: "carry its load" };
  return {
    at: Temporal.ZonedDateTime.compare(load, wet) > 0 ? load : wet,
    may: "carry its load and get wet",
  };
};

/** For glue, resin and sealant put on today: when it may be used again, or the one question that this needs. */
export const curing = (turn: Turn, told: Told): string | undefined => {
  const fresh = freshCure(turn, told);
  if (fresh === undefined) return undefined;
  const tempC = findTemperature(told.note.text, usualDegrees(turn.rig));
  if (tempC !== undefined) return planReady(turn, fresh.record, tempC);
  if (told.saved.some(({ unclear }) => unclear !== null)) return undefined;
  waitFor(turn, { is: "temperature", record: fresh.record.id });
  return `Tell me how warm it is there, and I say when the ${fresh.material} is ready.`;
};
