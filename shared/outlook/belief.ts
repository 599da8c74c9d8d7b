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

/** Evidence of the same kind of fix on the rig, summed, and what of it is to be left out as it counts otherwise. */
export type Peers = {
  readonly sum: LogWeights;
  readonly count: number;
  readonly without: readonly LogWeights[];
};

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
  const weights = priorOf(kind).slice();
  for (const evidence of line) addWeights(weights, evidence, 1);
  const weight = peerWeight(peers.count - peers.without.length, settings);
  if (weight > 0) {
    addWeights(weights, peers.sum, weight);
    for (const evidence of peers.without) addWeights(weights, evidence, -weight);
  }
  return predict(kind, weights);
};
