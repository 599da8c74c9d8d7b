import type { AskedFor, MessageKind } from "../../../../nlp/judges/talk.ts";
import type { Scene, Shown } from "../../../../shared/memory/scene.ts";
import type { Moment } from "../../../../shared/reading.ts";
import type { RecordFields } from "../../../../shared/record.ts";
import type { Expected } from "../../../gold/talk.ts";

export type MessageClass = MessageKind | "";

/** A message of which it is known what it is, and what it is heard against. */
export type KnownMessage = {
  readonly text: string;
  readonly moment: Moment;
  readonly scene: Scene;
  /** All records that are known by then, newest first; the same objects as in the scene. */
  readonly told: readonly Shown[];
  /** Which of all that is put right or taken away, where that is known. */
  readonly about?: RecordFields;
  readonly is: MessageClass;
  /** What it asks for, where that is known. */
  readonly asks?: AskedFor;
  /** Whether it asks about the whole rig, where that is known. */
  readonly ofAll?: boolean;
  /** The thing that it asks about, where that is known. */
  readonly component?: string;
  /** Whether all that was told before is of the same log, and whether what is asked about was ever done. */
  readonly ofOneLog?: boolean;
  readonly never?: boolean;
  /** What the record says once it is put right. */
  readonly fixed?: Expected & { readonly done_by?: string };
};
