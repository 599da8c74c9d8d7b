import samplerate from "@alexanderolsen/libsamplerate-js";
import { SAMPLE_RATE } from "./sound.ts";

/** Band-limited interpolation (libsamplerate's fast windowed sinc) of mono samples to what the recogniser takes. */
export const resample = async (samples: Float32Array, rate: number): Promise<Float32Array> => {
  if (rate === SAMPLE_RATE || samples.length === 0) return samples;
  const converterType = samplerate.ConverterType.SRC_SINC_FASTEST;
  const converter = await samplerate.create(1, rate, SAMPLE_RATE, { converterType });
  try {
    return converter.simple(samples).slice();
  } finally {
    converter.destroy();
  }
};
