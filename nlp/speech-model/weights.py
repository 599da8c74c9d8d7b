"""Named float32 arrays in one file, as safetensors lays them out: a length, a JSON header, the bytes."""
import json
import struct

import numpy as np


def save(state, path):
    header, at, parts = {}, 0, []
    for name, tensor in state.items():
        data = tensor.detach().float().cpu().numpy().astype("<f4").tobytes()
        header[name] = {"dtype": "F32", "shape": list(tensor.shape), "data_offsets": [at, at + len(data)]}
        at += len(data)
        parts.append(data)
    head = json.dumps(header).encode()
    path.write_bytes(struct.pack("<Q", len(head)) + head + b"".join(parts))


def load(path):
    data = path.read_bytes()
    size = struct.unpack("<Q", data[:8])[0]
    header = json.loads(data[8 : 8 + size])
    arrays = {}
    for name, about in header.items():
        first, last = about["data_offsets"]
        arrays[name] = np.frombuffer(data[8 + size + first : 8 + size + last], "<f4").reshape(about["shape"]).copy()
    return arrays
