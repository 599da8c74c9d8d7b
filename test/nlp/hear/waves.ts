/** A sine of half the full height. */
export const tone = (hertz: number, seconds: number, rate: number): Float32Array =>
  Float32Array.from(
    { length: Math.round(seconds * rate) },
    (_, i) => 0.5 * Math.sin((2 * Math.PI * hertz * i) / rate),
  );

/** Noise from a fixed seed, between -height and height. */
export const noise = (seconds: number, rate: number, height: number): Float32Array => {
  let seed = 2009;
  return Float32Array.from({ length: Math.round(seconds * rate) }, () => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) | 0;
    return (seed / 2 ** 31) * height;
  });
};

/** A 16-bit WAV file of interleaved samples. */
export const wav = (samples: Float32Array, rate: number, channels = 1): Uint8Array => {
  const file = Buffer.alloc(44 + samples.length * 2);
  file.write("RIFF", 0);
  file.writeUInt32LE(36 + samples.length * 2, 4);
  file.write("WAVEfmt ", 8);
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20);
  file.writeUInt16LE(channels, 22);
  file.writeUInt32LE(rate, 24);
  file.writeUInt32LE(rate * channels * 2, 28);
  file.writeUInt16LE(channels * 2, 32);
  file.writeUInt16LE(16, 34);
  file.write("data", 36);
  file.writeUInt32LE(samples.length * 2, 40);
  for (const [i, value] of samples.entries()) file.writeInt16LE(Math.round(value * 32_767), 44 + i * 2);
  return file;
};
