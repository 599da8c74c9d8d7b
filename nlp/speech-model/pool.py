"""All speech so far in one row of int16 on the device, growing as shards arrive."""
import json

import numpy as np
import torch

RATE = 16_000
WINDOW = 10 * RATE


class Pool:
    def __init__(self, folder, split, tokens, capacity, device):
        self.folder, self.split, self.tokens, self.device = folder, split, tokens, device
        self.row = torch.zeros(capacity, dtype=torch.int16, device=device)
        self.filled = 0
        self.starts, self.lengths, self.texts, self.shards = [], [], [], []
        self.seen = set()

    def load(self, at_most=10**9, forbidden=frozenset()):
        """Takes in new shards; a text of the test is never trained on."""
        for path in sorted(self.folder.glob(f"{self.split}-*.json")):
            if path.name in self.seen or at_most <= 0:
                continue
            about, sound = json.loads(path.read_text()), np.load(path.with_suffix(".npy"))
            if self.filled + len(sound) + 1 > len(self.row):
                return
            self.seen.add(path.name)
            at_most -= 1
            self.row[self.filled : self.filled + len(sound)] = torch.from_numpy(sound).to(self.device)
            at = self.filled
            for length, text in zip(about["lengths"], about["texts"]):
                if text not in forbidden:
                    self.starts.append(at)
                    self.lengths.append(length)
                    self.texts.append(self.tokens.encode(text))
                    self.shards.append(len(self.seen))
                at += length
            self.filled += len(sound)
            path.with_suffix(".npy").unlink()

    def hours(self):
        return self.filled / RATE / 3600

    def windows(self, random, batch, longest=100):
        """Plans of windows: up to four stretches of one voice with gaps, and the ids they say."""
        plans = []
        for _ in range(batch):
            if random.random() < 0.02:
                plans.append(([], [], random.uniform(0.5, 9.9) * RATE))
                continue
            n = random.randrange(len(self.starts))
            speed = random.uniform(0.88, 1.14)
            goal = random.uniform(1.0, 9.8) * RATE
            at = random.uniform(0, 0.5) * RATE
            pieces, ids = [], []
            while len(pieces) < 4 and n < len(self.starts):
                length = self.lengths[n] / speed
                full = at + length > 9.9 * RATE or len(ids) + len(self.texts[n]) > longest
                if full or (pieces and (at + length > goal or self.shards[n] != shard)):
                    break
                pieces.append((at, self.starts[n], length, speed))
                ids += self.texts[n]
                shard, at, n = self.shards[n], at + length + random.uniform(0.05, 0.9) * RATE, n + 1
            end = min(WINDOW, at + random.uniform(-0.1, 0.8) * RATE)
            plans.append((pieces, ids, end))
        return plans

    def sound(self, plans):
        """[batch, samples] of the plans, resampled by linear interpolation; and where each recording lasts."""
        batch, most = len(plans), 4
        table = np.zeros((4, most, batch, 1))
        table[1] = -1
        for b, (pieces, _, _) in enumerate(plans):
            for k, (at, start, length, speed) in enumerate(pieces):
                table[:, k, b, 0] = at, length, start, speed
        at, length, start, speed = torch.from_numpy(table).to(self.device)
        time = torch.arange(WINDOW, device=self.device, dtype=torch.float64)[None]
        out = torch.zeros(batch, WINDOW, device=self.device)
        for k in range(most):
            there = (time >= at[k]) & (time < at[k] + length[k] - 1)
            place = start[k] + ((time - at[k]) * speed[k]).clamp(min=0) * there
            whole = place.floor()
            part = (place - whole).float()
            index = whole.long()
            value = self.row[index].float() * (1 - part) + self.row[index + 1].float() * part
            out = out + value * there / 32768
        ends = torch.tensor([end for _, _, end in plans], device=self.device)[:, None]
        return out, (time < ends).float()
