"""Byte-pair encoding (Gage 1994; Sennrich, Haddow and Birch 2016) over the bytes of words with their leading space."""
import collections
import json

SPECIALS = ["<|endoftext|>", "<|startoftranscript|>", "<|startofprev|>", "<|nospeech|>", "<|notimestamps|>"]
SPACE = "\u0120"
# The printable stand-ins for bytes that byte-level tokenizers use.
PLAIN = [*range(33, 127), *range(161, 173), *range(174, 256)]
BYTES = [chr(byte) for byte in PLAIN] + [chr(256 + n) for n in range(256 - len(PLAIN))]


def learn_merges(counts, how_many):
    """The most frequent pairs, one after the other. `counts`: how often each word occurs."""
    words = {word: list(SPACE + word) for word in counts}
    merges = []
    while len(merges) < how_many:
        pairs = collections.Counter()
        for word, parts in words.items():
            for pair in zip(parts, parts[1:]):
                pairs[pair] += counts[word]
        if not pairs:
            break
        best = max(pairs, key=lambda pair: (pairs[pair], pair))
        merges.append(best)
        for word, parts in words.items():
            if best[0] in parts:
                words[word] = merged(parts, best)
    return merges


def merged(parts, pair):
    out, i = [], 0
    while i < len(parts):
        if i + 1 < len(parts) and (parts[i], parts[i + 1]) == pair:
            out.append(parts[i] + parts[i + 1])
            i += 2
        else:
            out.append(parts[i])
            i += 1
    return out


class Tokens:
    """Text to ids and back. Ids: the bytes, the merges, then the specials."""

    def __init__(self, merges):
        self.merges = [tuple(pair) for pair in merges]
        self.ranks = {pair: rank for rank, pair in enumerate(self.merges)}
        self.pieces = BYTES + ["".join(pair) for pair in self.merges]
        self.ids = {piece: i for i, piece in enumerate(self.pieces)}
        self.special = {name: len(self.pieces) + i for i, name in enumerate(SPECIALS)}
        self.size = len(self.pieces) + len(SPECIALS)
        self.known = {}

    def word(self, word):
        if word not in self.known:
            parts = list(SPACE + word)
            while True:
                ranked = [(self.ranks.get(pair, 1 << 30), pair) for pair in zip(parts, parts[1:])]
                if not ranked or min(ranked)[0] == 1 << 30:
                    break
                parts = merged(parts, min(ranked)[1])
            self.known[word] = [self.ids[part] for part in parts]
        return self.known[word]

    def encode(self, text):
        return [i for word in text.split() for i in self.word(word)]

    def decode(self, ids):
        return "".join(self.pieces[i] for i in ids if i < len(self.pieces)).replace(SPACE, " ").strip()

    def save(self, path):
        path.write_text(json.dumps({"merges": [" ".join(pair) for pair in self.merges], "specials": SPECIALS}))

    @staticmethod
    def load(path):
        return Tokens([line.split(" ") for line in json.loads(path.read_text())["merges"]])
