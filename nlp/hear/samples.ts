/** Float samples that grow as they come, so that a long note is never held twice. */
export class SampleStore {
  #samples: Float32Array;
  #length = 0;

  constructor(expected: number) {
    this.#samples = new Float32Array(Math.max(1, Math.ceil(expected)));
  }

  get length(): number {
    return this.#length;
  }

  push(part: Float32Array): void {
    const needed = this.#length + part.length;
    if (needed > this.#samples.length) this.#grow(needed);
    this.#samples.set(part, this.#length);
    this.#length = needed;
  }

  taken(): Float32Array {
    return this.#samples.subarray(0, this.#length);
  }

  #grow(needed: number): void {
    const larger = new Float32Array(Math.max(needed, Math.ceil(this.#samples.length * 1.5)));
    larger.set(this.taken());
    this.#samples = larger;
  }
}

/** The mean of all channels, cut to `length`. */
export const mixDown = (channels: readonly Float32Array[], length: number): Float32Array => {
  const [first, ...others] = channels;
  if (first === undefined) return new Float32Array(0);
  if (others.length === 0) return first.subarray(0, length);
  const mono = first.slice(0, length);
  for (const channel of others) for (let i = 0; i < length; i++) mono[i] = (mono[i] ?? 0) + (channel[i] ?? 0);
  for (let i = 0; i < length; i++) mono[i] = (mono[i] ?? 0) / channels.length;
  return mono;
};
