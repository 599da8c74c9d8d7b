"""Writes what the model computes for small random weights, for the test of the ONNX graphs.

    python3 reference.py ../../test/nlp/speech-model
"""
import json
import pathlib
import sys

import torch

import weights
from features import FFT, log_mel, mel_filters
from model import Speech

SHAPE = {
    "width": 16, "heads": 2, "encoder_layers": 2, "decoder_layers": 2, "mels": 80,
    "frames": 10, "context": 12, "vocabulary": 24,
}  # fmt: skip


def rounded(tensor):
    return [round(value, 6) for value in tensor.flatten().tolist()]


def main(folder):
    torch.manual_seed(2009)
    time = torch.arange(3200) / 16_000
    sound = (0.4 * torch.sin(2 * torch.pi * (300 + 4000 * time) * time) * (time < 0.15))[None]
    mel = log_mel(sound, mel_filters(), torch.hann_window(FFT))
    model = Speech(SHAPE).eval()
    ids = [3, 1, 4, 1, 5, 9, 2]
    with torch.no_grad():
        for parameter in model.parameters():
            parameter.add_(torch.randn_like(parameter) * 0.1)
        heard = model.encoder(mel)
        scores = model.decoder(torch.tensor([ids]), heard)
    state = {name: value for name, value in model.state_dict().items() if not name.startswith("ctc")}
    weights.save(state, folder / "reference.safetensors")
    found = {"shape": SHAPE, "sound": rounded(sound), "mel": rounded(mel), "heard": rounded(heard), "ids": ids, "scores": rounded(scores)}
    (folder / "reference.json").write_text(json.dumps(found))


if __name__ == "__main__":
    main(pathlib.Path(sys.argv[1]))
