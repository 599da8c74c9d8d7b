import { stepsOf } from "../../shared/memory/pool.ts";
import type { Topic } from "../../shared/memory/query.ts";
import { type Decision, decide, decisionWords, type MoneyGiven } from "../../shared/outlook/index.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { componentName } from "../../shared/vocabulary.ts";
import { sayMoney } from "../rig/money.ts";
import { outlookRig } from "../rig/outlook-rig.ts";
import { waitFor } from "./pending.ts";
import type { Turn } from "./turn.ts";

const NOTHING_GIVEN: MoneyGiven = {
  mendCost: null,
  replaceCost: null,
  replaceYears: null,
  failureCost: null,
};

const decisionOn = (turn: Turn, component: ComponentId, given: MoneyGiven): Decision | undefined => {
  const { use, settings, hemisphere } = outlookRig(turn);
  const line = turn.store.history.records({ components: [component] });
  return decide({ component, line, given, use, settings, hemisphere });
};

/** Says whether to mend again or to replace, and asks for the number that could turn it. */
export const decideFor = (turn: Turn, component: ComponentId, given: Partial<MoneyGiven>): void => {
  const decision = decisionOn(turn, component, { ...NOTHING_GIVEN, ...given });
  if (decision === undefined) {
    turn.say({
      text: `I have no repair of the ${componentName(component)} on record, so I can't weigh patching against replacing. Tell me what was done to it so far.`,
    });
    return;
  }
  if (decision.missing !== null) {
    const known = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== null));
    waitFor(turn, { is: "number", component, wanted: decision.missing, given: known });
  }
  turn.say({
    text: decisionWords(component, decision, (amount) => sayMoney(amount, turn.rig.zone)),
  });
};

export const decideOn = (turn: Turn, topic: Topic): void => {
  const component = stepsOf(topic)[0]?.[0] ?? lastComponent(turn);
  if (component === undefined)
    turn.say({ text: "Which part do you mean? Say it like “is it worth patching the shower pan again?”" });
  else decideFor(turn, component, {});
};

const lastComponent = (turn: Turn): ComponentId | undefined => {
  const shown = turn.store.outbox.lastShown(turn.chat.channel, turn.chat.chatId)?.shows.records ?? [];
  return shown.length === 1 ? turn.store.history.record(shown[0] ?? 0)?.fields.component : undefined;
};
