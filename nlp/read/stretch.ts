/** A stretch of tokens, `to` exclusive. */
export type Stretch = { readonly from: number; readonly to: number };
