import type { Attempt } from "./attempt.ts";
import { addWeights, emptyWeights, type LogWeights, learn, priorWeights } from "./grid.ts";
import { type Prediction, predict } from "./prediction.ts";
import type { FixKind } from "./priors.ts";
import type { Settings } from "./settings.ts";

/** What is believed of fixes of one kind before any evidence, computed once a kind. */
const priors = new Map<string, LogWeights>();
const priorOf = (kind: FixKind): LogWeights => {
  const known = priors.get(kind.id);
  if (known !== undefined) return known;
  const weights = priorWeights(kind);
  priors.set(kind.id, weights);
  return weights;
};

export const evidenceOf = ({ kind, observation }: Attempt): LogWeights => {
  const weights = emptyWeights();
  learn(weights, kind, observation, 1);
  return weights;
};

/** Evidence of the same kind of fix elsewhere on the rig, summed. */
export type Peers = { readonly sum: LogWeights; readonly count: number };

const peerWeight = (count: number, { peerWeight, peerCap }: Settings): number =>
  count === 0 ? 0 : Math.min(peerWeight, peerCap / count);

/**
 * Prediction for a fix from its kind's prior, the earlier attempts on the same line (in full) and its peers (with less
 * weight). The fix's own looks are left out: they cut the prediction off, they do not shape it.
 */
export const believe = (
  kind: FixKind,
  line: readonly LogWeights[],
  peers: Peers,
  settings: Settings,
): Prediction => {
  const weights = Float64Array.from(priorOf(kind));
  for (const evidence of line) addWeights(weights, evidence, 1);
  addWeights(weights, peers.sum, peerWeight(peers.count, settings));
  return predict(kind, weights);
};
