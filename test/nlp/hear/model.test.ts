import { cp, mkdtemp, readdir, readFile, rm, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { fetchModel } from "../../../nlp/hear/fetch-model.ts";
import { findModel, SAMPLE_MODEL } from "../../../nlp/hear/find-model.ts";
import { HUB_MODELS } from "../../../nlp/hear/hub.ts";
import { checkModel } from "../../../nlp/hear/model-folder.ts";
import { type HubServer, startHubServer } from "./hub-server.ts";
import { littleModel } from "./little-model.ts";

const ENCODER = "onnx/encoder_model_quantized.onnx";
let home: string;
let model: string;
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), "models-"));
  model = await littleModel();
});

describe("a model folder", () => {
  it("is whole, or names what is missing or damaged", async () => {
    expect(await checkModel(model, true)).toEqual({ tag: "whole", name: "random weights" });
    expect(await checkModel(join(home, "nothing"))).toEqual({ tag: "no-folder" });
    await truncate(join(model, ENCODER), 2000);
    expect(await checkModel(model)).toEqual({ tag: "damaged", files: [ENCODER] });
    await rm(join(model, ENCODER));
    expect(await checkModel(model)).toEqual({ tag: "missing", files: [ENCODER] });
  });

  it("with a changed byte is found by a thorough check", async () => {
    const bytes = await readFile(join(model, ENCODER));
    bytes[1000] = (bytes[1000] ?? 0) ^ 1;
    await writeFile(join(model, ENCODER), bytes);
    expect(await checkModel(model)).toMatchObject({ tag: "whole" });
    expect(await checkModel(model, true)).toEqual({ tag: "damaged", files: [ENCODER] });
  });

  it("that comes along is whole and says what it is for", async () => {
    expect(await checkModel(SAMPLE_MODEL, true)).toEqual({
      tag: "whole",
      name: "for trying out with synthetic voices, not for people",
    });
  });
});

describe("finding a model", () => {
  const places = (given: string | null, sample: boolean): Parameters<typeof findModel>[0] => ({
    given,
    fetched: join(home, "models"),
    sample,
  });

  it("takes the folder given and no other", async () => {
    expect(await findModel(places(model, false))).toMatchObject({ tag: "model", kind: "given", dir: model });
    expect(await findModel(places(join(home, "typo"), true))).toMatchObject({ tag: "no-model" });
  });

  it("takes a fetched one before the sample, and the sample only where allowed", async () => {
    expect(await findModel(places(null, false))).toEqual({ tag: "no-model", broken: [] });
    expect(await findModel(places(null, true))).toMatchObject({ kind: "sample" });
    await cp(model, join(home, "models", "base"), { recursive: true });
    expect(await findModel(places(null, true))).toMatchObject({ kind: "fetched" });
  });
});

describe("fetching a model", () => {
  let hub: HubServer;
  const fetching = (): Promise<string> =>
    fetchModel({ model: "base", into: join(home, "models"), host: hub.host });
  beforeEach(async () => {
    const names = (await readdir(model, { recursive: true })).filter((name) => /\.(json|onnx)$/.test(name));
    const files = await Promise.all(
      names.map(async (name) => [name, await readFile(join(model, name))] as const),
    );
    hub = await startHubServer(HUB_MODELS.base.repo, new Map(files));
  });
  afterEach(() => hub.close());

  it("brings a whole model and counts the bytes", async () => {
    let last = { doneBytes: 0, totalBytes: 1 };
    const dir = await fetchModel({
      model: "base",
      into: join(home, "models"),
      host: hub.host,
      onProgress: (progress) => {
        expect(progress.doneBytes).toBeGreaterThanOrEqual(last.doneBytes);
        last = progress;
      },
    });
    expect(last.doneBytes).toBe(last.totalBytes);
    expect(await checkModel(dir, true)).toEqual({ tag: "whole", name: "base, English" });
  });

  it("goes on where a broken try ended", async () => {
    hub.cutNext(ENCODER, 30_000);
    await expect(fetching()).rejects.toThrow();
    expect(await findModel({ given: null, fetched: join(home, "models"), sample: false })).toEqual({
      tag: "no-model",
      broken: [],
    });
    const dir = await fetching();
    expect(hub.asked).toContain(`${ENCODER} bytes=30000-`);
    expect(hub.asked.filter((path) => path === "tokenizer.json")).toHaveLength(1);
    expect(await checkModel(dir, true)).toMatchObject({ tag: "whole" });
  });

  it("does not fetch again what is there", async () => {
    await fetching();
    const before = hub.asked.length;
    await fetching();
    expect(hub.asked).toHaveLength(before);
  });

  it("puts nothing in place that is not what the hub lists", async () => {
    hub.spoil(ENCODER);
    await expect(fetching()).rejects.toThrow("did not arrive as it left");
    hub.spoil(null);
    expect(await checkModel(await fetching(), true)).toMatchObject({ tag: "whole" });
  });
});
