"""Speaks texts of the grammar and writes shards (int16 at 16 kHz, texts) for as long as it is let run.

    python3 synthesise.py FOLDER --split train --workers 14 --seed 1 --shards 4000
"""
import argparse
import io
import json
import multiprocessing
import os
import pathlib
import random
import subprocess
import tempfile
import wave

import numpy as np
from scipy.signal import resample_poly

from grammar import Grammar
from spoken import spoken
from voices import pick_voice

RATE = 16_000
UTTERANCES = 48
BITRATES = [16, 20, 24]


def samples_of(wav_bytes):
    """Mono int16 at 16 kHz. Streamed WAV headers lie about their length, so it is taken from the bytes."""
    with wave.open(io.BytesIO(wav_bytes)) as file:
        rate = file.getframerate()
    data = wav_bytes[44 : len(wav_bytes) - len(wav_bytes) % 2]
    sound = np.frombuffer(data, np.int16).astype(np.float32)
    if rate != RATE:
        divisor = np.gcd(rate, RATE)
        sound = resample_poly(sound, RATE // divisor, rate // divisor)
    return trimmed(np.clip(sound, -32768, 32767).astype(np.int16))


def trimmed(sound, margin=800):
    loud = np.flatnonzero(np.abs(sound.astype(np.int32)) > 200)
    return sound[max(0, loud[0] - margin) : loud[-1] + margin] if loud.size else sound[:0]


def through_opus(sound, kilobits):
    """The same samples after a round trip through Opus as a phone sends it."""
    with tempfile.TemporaryDirectory(dir="/dev/shm") as folder:
        raw, ogg, back = (f"{folder}/{name}" for name in ("a.raw", "a.ogg", "b.raw"))
        sound.tofile(raw)
        form = ["--raw", "--raw-rate", str(RATE), "--raw-chan", "1", "--bitrate", str(kilobits), "--comp", "4", "--quiet"]
        subprocess.run(["opusenc", *form, raw, ogg], check=True, capture_output=True)
        subprocess.run(["opusdec", "--quiet", "--rate", str(RATE), "--force-wav", "--no-dither", ogg, back], check=True, capture_output=True)
        out = np.fromfile(back, np.int16)[22:]
    return np.pad(out, (0, max(0, len(sound) - len(out))))[: len(sound)]


def shard(random, grammar, split):
    name, say = pick_voice(random, split)
    sounds, texts = [], []
    for _ in range(UTTERANCES):
        text = grammar.piece()
        try:
            sound = samples_of(say(spoken(text, random)))
        except (subprocess.SubprocessError, EOFError, wave.Error):
            continue
        if RATE * 0.3 < len(sound) < RATE * 9.6:
            sounds.append(sound)
            texts.append(text)
    kilobits = random.choice([0, 0, *BITRATES]) if split == "train" else random.choice([0, 24])
    joined = np.concatenate(sounds)
    if kilobits:
        joined = through_opus(joined, kilobits)
    return joined, {"voice": name, "kilobits": kilobits, "lengths": [len(sound) for sound in sounds], "texts": texts}


def work(folder, split, seed, count, words):
    os.nice(5)
    rng = random.Random(seed)
    grammar = Grammar(rng, words)
    for n in range(count):
        try:
            sound, about = shard(rng, grammar, split)
        except (subprocess.SubprocessError, ValueError) as error:
            print("shard left out:", error, flush=True)
            continue
        name = f"{split}-{seed}-{n}"
        np.save(folder / f"{name}.npy", sound)
        (folder / f"{name}.part").write_text(json.dumps(about))
        (folder / f"{name}.part").rename(folder / f"{name}.json")


def dictionary(path):
    """Plain lower-case words of a word list, when there is one."""
    if not path or not pathlib.Path(path).exists():
        return []
    lines = pathlib.Path(path).read_text().splitlines()
    return [line for line in lines if line.isascii() and line.isalpha() and line.islower() and 3 <= len(line) <= 10]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("folder", type=pathlib.Path)
    parser.add_argument("--split", default="train")
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--shards", type=int, default=4)
    parser.add_argument("--words", default="/usr/share/dict/words")
    args = parser.parse_args()
    args.folder.mkdir(parents=True, exist_ok=True)
    words = dictionary(args.words)
    jobs = [(args.folder, args.split, args.seed * 1000 + i, args.shards, words) for i in range(args.workers)]
    processes = [multiprocessing.Process(target=work, args=job) for job in jobs]
    for process in processes:
        process.start()
    for process in processes:
        process.join()


if __name__ == "__main__":
    main()
