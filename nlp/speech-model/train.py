"""Trains the model on shards as they arrive, until a moment given in a file; see README.md.

    python3 train.py --pool /dev/shm/pool --out /tmp/out --seconds 1500 --batch 160
"""
import argparse
import json
import math
import pathlib
import random
import time

import torch
import torch.nn.functional as F

import weights
from augment import Augment, mask_features
from features import FFT, log_mel, mel_filters
from grammar import Grammar
from greedy import score
from model import SHAPE, Speech
from pool import WINDOW, Pool
from tokens import Tokens

IDS = 136
IGNORED = -100


def target_ids(plan_ids, tokens, words, rng):
    """Decoder input and what is to follow; a quarter carry some of their own words, and others, as a prompt."""
    special = tokens.special
    prompt = []
    if rng.random() < 0.25 and len(plan_ids) > 0:
        prompt = [special["<|startofprev|>"], *prompt_ids(plan_ids, tokens, words, rng)]
    head = [*prompt, special["<|startoftranscript|>"], special["<|notimestamps|>"]]
    full = [*head, *plan_ids, special["<|endoftext|>"]]
    shown, wanted = full[:-1], [IGNORED] * (len(head) - 1) + full[len(head) :]
    pad = IDS - len(shown)
    return shown + [special["<|endoftext|>"]] * pad, wanted + [IGNORED] * pad


def prompt_ids(plan_ids, tokens, words, rng, most=30):
    own = tokens.decode(plan_ids).split()
    picked = rng.sample(own, min(len(own), rng.randint(0, 4))) + rng.sample(words, rng.randint(1, 8))
    rng.shuffle(picked)
    return tokens.encode(" ".join(picked))[:most]


class Training:
    def __init__(self, args):
        self.args, self.device = args, torch.device(args.device)
        here = pathlib.Path(__file__).parent
        self.tokens = Tokens.load(here / "tokens.json")
        self.rng = random.Random(args.seed)
        self.words = Grammar(self.rng).words
        self.filters = mel_filters().to(self.device)
        self.window = torch.hann_window(FFT, device=self.device)
        self.model = Speech(SHAPE).to(self.device)
        self.augment = Augment(WINDOW, self.device)
        self.tests = [Pool(args.pool, split, self.tokens, 60 * 10 * 16_000 * 6, self.device) for split in args.tests.split(",")]
        for test in self.tests:
            test.load()
        forbidden = self.forbidden()
        self.pool = Pool(args.pool, "train", self.tokens, int(args.hours * 3600 * 16_000), self.device)
        self.take_in = lambda at_most=24: self.pool.load(at_most, forbidden)
        self.started = time.time()
        self.step = 0

    def forbidden(self):
        return frozenset(self.tokens.decode(ids) for test in self.tests for ids in test.texts)

    def share_done(self):
        return (time.time() - self.started) / float(self.args.seconds.read_text())

    def rate(self):
        warm = min(1, (self.step + 1) / self.args.warmup)
        return self.args.rate * warm * (0.5 + 0.5 * math.cos(math.pi * min(1, self.share_done()))) + 1e-6

    def batch(self):
        plans = self.pool.windows(self.rng, self.args.batch)
        with torch.no_grad():
            voice, inside = self.pool.sound(plans)
            mel = mask_features(log_mel(self.augment(voice, inside), self.filters, self.window), self.device)
        rows = [target_ids(ids, self.tokens, self.words, self.rng) for _, ids, _ in plans]
        shown, wanted = (torch.tensor(list(part), device=self.device) for part in zip(*rows))
        flat = torch.tensor([i for _, ids, _ in plans for i in ids], device=self.device)
        lengths = torch.tensor([len(ids) for _, ids, _ in plans], device=self.device)
        return mel, shown, wanted, flat, lengths

    def losses(self, batch, forward):
        mel, shown, wanted, flat, lengths = batch
        with torch.autocast(self.device.type, dtype=torch.bfloat16, enabled=self.args.device != "cpu"):
            logits, ctc = forward(mel, shown)
        text = F.cross_entropy(logits.float().flatten(0, 1), wanted.flatten(), ignore_index=IGNORED, label_smoothing=0.05)
        log_probabilities = ctc.float().log_softmax(-1).transpose(0, 1)
        frames = torch.full_like(lengths, ctc.shape[1])
        aligned = F.ctc_loss(log_probabilities, flat, frames, lengths, blank=self.tokens.size, zero_infinity=True)
        return text, aligned

    def compiled(self):
        """The model made faster where the machine's compiler can; else as it is."""
        try:
            forward = torch.compile(self.model)
            text, aligned = self.losses(self.batch(), forward)
            (text + aligned).backward()
            return forward
        except Exception as error:  # a compiler may fail in any way, and training goes on without it
            print("not compiled:", str(error)[:300], flush=True)
            return self.model

    def run(self):
        optimiser = torch.optim.AdamW(self.model.parameters(), lr=1e-3, betas=(0.9, 0.98), weight_decay=0.01)
        forward = self.compiled() if self.args.compile else self.model
        last_test, told = time.time(), time.time()
        while self.share_done() < 1:
            if self.step % 50 == 0:
                self.take_in()
            for group in optimiser.param_groups:
                group["lr"] = self.rate()
            text, aligned = self.losses(self.batch(), forward)
            optimiser.zero_grad(set_to_none=True)
            (text + 0.3 * aligned).backward()
            torch.nn.utils.clip_grad_norm_(self.model.parameters(), 1.0)
            optimiser.step()
            self.step += 1
            if self.step % self.args.tell == 0:
                each = (time.time() - told) / self.args.tell
                told = time.time()
                print(f"step {self.step} text {text.item():.3f} ctc {aligned.item():.3f} rate {self.rate():.2e} "
                      f"{1000 * each:.0f} ms hours {self.pool.hours():.1f} done {self.share_done():.3f}", flush=True)  # fmt: skip
            if time.time() - last_test > self.args.test_every:
                self.test(48)
                self.save()
                last_test = time.time()
        self.test(10**6)
        self.save()
        print("finished", flush=True)

    @torch.no_grad()
    def test(self, most):
        self.model.eval()
        for test in self.tests:
            picked = range(0, len(test.starts), max(1, len(test.starts) // most))
            plans = [([(1600.0, test.starts[n], test.lengths[n], 1.0)], test.texts[n], min(WINDOW, 3200 + test.lengths[n])) for n in picked]
            mels = [log_mel(self.pool_sound(test, plans[i : i + 64]), self.filters, self.window) for i in range(0, len(plans), 64)]
            texts = [self.tokens.decode(ids) for _, ids, _ in plans]
            errors, heard = score(self.model, torch.cat(mels), texts, self.tokens)
            print(f"test {test.split} {len(texts)} texts word error rate {100 * errors:.2f} %", flush=True)
            for said, got in list(zip(texts, heard))[:3]:
                print("   said:", said, "\n  heard:", got, flush=True)
        self.model.train()

    @staticmethod
    def pool_sound(test, plans):
        sound, inside = test.sound(plans)
        return sound * inside

    def save(self):
        self.args.out.mkdir(parents=True, exist_ok=True)
        state = {name: value for name, value in self.model.state_dict().items() if not name.startswith("ctc")}
        weights.save(state, self.args.out / "weights.part")
        (self.args.out / "weights.part").rename(self.args.out / "weights.safetensors")
        (self.args.out / "shape.json").write_text(json.dumps({**SHAPE, "step": self.step}))


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--pool", type=pathlib.Path, required=True)
    parser.add_argument("--out", type=pathlib.Path, required=True)
    parser.add_argument("--seconds", type=pathlib.Path, required=True, help="a file that holds how long to train")
    parser.add_argument("--tests", default="known,kept-out")
    parser.add_argument("--device", default="cuda" if torch.cuda.is_available() else "cpu")
    parser.add_argument("--batch", type=int, default=160)
    parser.add_argument("--hours", type=float, default=250, help="room for speech on the device")
    parser.add_argument("--rate", type=float, default=1.5e-3)
    parser.add_argument("--warmup", type=int, default=1000)
    parser.add_argument("--tell", type=int, default=200)
    parser.add_argument("--test-every", type=float, default=150)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--compile", action="store_true")
    args = parser.parse_args()
    torch.backends.cuda.matmul.allow_tf32 = True
    torch.manual_seed(args.seed)
    training = Training(args)
    while training.pool.hours() < min(2, args.hours / 4):
        time.sleep(0.5)
        training.take_in(10**6)
    training.started = time.time()
    training.run()


if __name__ == "__main__":
    main()
