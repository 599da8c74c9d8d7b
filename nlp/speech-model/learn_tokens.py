"""Learns the token table from the grammar's words and writes tokens.json."""
import collections
import pathlib
import random

from grammar import Grammar
from synthesise import dictionary
from tokens import SPECIALS, Tokens, learn_merges

SIZE = 1024
NOTES = 60_000


def main():
    words = dictionary("/usr/share/dict/words")
    grammar = Grammar(random.Random(2009), words)
    counts = collections.Counter({word: 3 for word in words})
    for _ in range(NOTES):
        counts.update(grammar.note().split())
    merges = learn_merges(counts, SIZE - 256 - len(SPECIALS))
    Tokens(merges).save(pathlib.Path(__file__).parent / "tokens.json")


if __name__ == "__main__":
    main()
