import type { Purpose } from "../../shared/memory/intent.ts";
import type { Scene } from "../../shared/memory/scene.ts";
import { topicOf } from "../ask/topic.ts";

/** What is crossed off is said in a few words: "scratch the pump ..., and it quit when it cooled off" is a story. */
const OFF =
  /^(?:please )?(?:(?:cross|tick|check|strike|scratch|mark) off (?:the |my |that )?(.+)|(?:cross|tick|check|strike|scratch|mark) (?:the |my |that )?(\S+(?: \S+){0,9}?) (?:off|as done|done|from the list)(?: (?:the|my) list)?|take (?:the |my )?(.+?) off (?:the|my) (?:shopping |to ?do )?list|(?:the |my )?(.+?) (?:is|are|can come|can go) off the list)$/;
const NO_NEED =
  /^(?:i |we )?(?:dont|do not|no longer) (?:need|have to (?:do|buy|fix)|want) (?:the |a |an |to (?:do|buy|fix|replace) (?:the |a )?)?(.+?) (?:any ?more|after all|now)$/;
const BARE =
  /^(?:(?:i |we |ive |weve )?(?:already )?(?:bought|got|did|done|fixed|replaced|sorted|ordered|finished) (?:it|that|one|them|those)(?: already| now| today)?|that (?:todo|one|job) is done|done|all done|thats done|done that|got it done|picked it up|finished|sorted|ticked|its done|job done|done and dusted|taken care of)$/;

const byTopic = (said: string | undefined, how: "done" | "dropped"): Purpose | undefined => {
  if (said === undefined) return undefined;
  const topic = topicOf(said);
  return (topic.named[0]?.sure ?? 0) >= 0.6 ? { is: "tick", records: [], topic, how } : undefined;
};

/** "Leave the windows, they're fine" */
const LEAVE =
  /^(?:(?:actually|no|ok|okay|well|so|oh|and|but|you know what) )*(?:leave|forget|forget about|never mind|skip|drop|dont bother with|not bothering with|im not bothering with|no need (?:for|to (?:do|replace|fix|buy))|scrap) (?:the |my |that |a |an )?(\w+(?: \w+){0,2})(?: (?:theyre|its|they are|it is|thats|for now|after all|then|this year|alone)\b.*)?$/;

/** Something on the list that is done, bought or not wanted any more. */
export const tickIn = (words: string, scene: Scene): Purpose | undefined => {
  const off = OFF.exec(words);
  const ticked =
    byTopic(
      (off?.slice(1) as (string | undefined)[] | undefined)?.find((said) => said !== undefined),
      "done",
    ) ??
    byTopic(NO_NEED.exec(words)?.[1], "dropped") ??
    byTopic(LEAVE.exec(words)?.[1], "dropped");
  if (ticked !== undefined) return ticked;
  const open =
    (scene.replyTo ?? scene.shown ?? scene.last)?.records.filter(
      ({ fields }) => fields.kind === "todo" || fields.kind === "fault",
    ) ?? [];
  const single = open.length === 1 ? open[0] : undefined;
  return single !== undefined && BARE.test(words)
    ? { is: "tick", records: [single.id], topic: null, how: "done" }
    : undefined;
};
