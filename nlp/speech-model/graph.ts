import onnxProto from "onnx-proto";

const { onnx } = onnxProto;

/** ONNX's numbers for element types (onnx.proto, TensorProto.DataType). */
export const TYPE = { float: 1, int8: 3, int32: 6, int64: 7, bool: 9 } as const;
const KIND = onnx.AttributeProto.AttributeType;

type Attribute = onnxProto.onnx.IAttributeProto;
export const float = (name: string, f: number): Attribute => ({ name, type: KIND.FLOAT, f });
export const int = (name: string, i: number): Attribute => ({ name, type: KIND.INT, i });
export const ints = (name: string, values: number[]): Attribute => ({
  name,
  type: KIND.INTS,
  ints: values,
});
export const branch = (name: string, g: onnxProto.onnx.IGraphProto): Attribute => ({
  name,
  type: KIND.GRAPH,
  g,
});

type Data = Float32Array | Int8Array | BigInt64Array;
const typeOf = (data: Data): number =>
  data instanceof Float32Array ? TYPE.float : data instanceof Int8Array ? TYPE.int8 : TYPE.int64;

type Port = onnxProto.onnx.IValueInfoProto;
/** An input or output; a dimension given by name may vary. */
export const port = (name: string, elemType: number, dims: readonly (number | string)[]): Port => ({
  name,
  type: {
    tensorType: {
      elemType,
      shape: { dim: dims.map((dim) => (typeof dim === "string" ? { dimParam: dim } : { dimValue: dim })) },
    },
  },
});

/** A graph that is written from the inputs on; names of values are given out as it grows. A branch keeps its constants in its root. */
export class Graph {
  readonly inputs: Port[] = [];
  readonly outputs: Port[] = [];
  readonly #nodes: onnxProto.onnx.INodeProto[] = [];
  readonly #root: Graph;
  readonly #constants = new Map<string, onnxProto.onnx.ITensorProto>();
  #count = 0;

  constructor(root?: Graph) {
    this.#root = root ?? this;
  }

  /** A named constant, made once. */
  constant(name: string, dims: readonly number[], data: () => Data): string {
    const constants = this.#root.#constants;
    if (!constants.has(name)) {
      const values = data();
      const rawData = Buffer.from(values.buffer, values.byteOffset, values.byteLength);
      constants.set(name, { name, dims: [...dims], dataType: typeOf(values), rawData });
    }
    return name;
  }

  number(value: number): string {
    return this.constant(`number ${value}`, [1], () => Float32Array.of(value));
  }

  index(value: number): string {
    return this.constant(`index ${value}`, [], () => BigInt64Array.of(BigInt(value)));
  }

  indices(...values: number[]): string {
    return this.constant(`indices ${values.join()}`, [values.length], () =>
      BigInt64Array.from(values.map(BigInt)),
    );
  }

  /** Adds an operation with one result and names it. */
  op(opType: string, input: string[], attribute: Attribute[] = []): string {
    const [output] = this.ops(opType, input, 1, attribute);
    if (output === undefined) throw new Error(`"${opType}" has no result.`);
    return output;
  }

  ops(opType: string, input: string[], results: number, attribute: Attribute[] = []): string[] {
    const output = Array.from({ length: results }, () => `${opType} ${this.#root.#count++}`);
    this.#nodes.push({ opType, input, output, attribute, name: output[0] ?? opType });
    return output;
  }

  /** Gives a value the name by which callers ask for it. */
  name(value: string, output: string): void {
    this.#nodes.push({ opType: "Identity", input: [value], output: [output], name: `name ${output}` });
  }

  /** An operation whose results have names of their own. */
  named(opType: string, input: string[], output: string[], attribute: Attribute[] = []): void {
    this.#nodes.push({ opType, input, output, attribute, name: output[0] ?? opType });
  }

  asBranch(name: string): onnxProto.onnx.IGraphProto {
    return { name, node: this.#nodes, input: this.inputs, output: this.outputs };
  }

  /** The file: IR version 8, operator set 17. */
  model(name: string): Uint8Array {
    const graph = { ...this.asBranch(name), initializer: [...this.#constants.values()] };
    const model = {
      irVersion: 8,
      producerName: "holdfast",
      opsetImport: [{ domain: "", version: 17 }],
      graph,
    };
    return onnx.ModelProto.encode(onnx.ModelProto.fromObject(model)).finish();
  }
}
