"""Sentences from the rules in grammar/*.txt: `name: a | b $other [maybe]`."""
import pathlib
import re

HERE = pathlib.Path(__file__).parent / "grammar"
WORD = re.compile(r"[a-z']+")
REFERENCE = re.compile(r"\$([a-z0-9]+)")
MAYBE = re.compile(r"\[([^\]]*)\]")


def read_rules(folder=HERE):
    text = "\n".join(path.read_text() for path in sorted(folder.glob("*.txt")))
    lines = [line for line in text.splitlines() if not line.startswith("#")]
    blocks = re.split(r"\n(?=[a-z0-9]+: )", "\n".join(lines))
    named = (block.strip().split(": ", 1) for block in blocks if ": " in block)
    return {name: [option.strip() for option in body.split("|") if option.strip()] for name, body in named}


def ending_in_s(word):
    """boss, bosses; city, cities; day, days."""
    if re.search(r"(s|x|z|ch|sh)$", word):
        return word + "es"
    return word[:-1] + "ies" if re.search(r"[^aeiou]y$", word) else word + "s"


def read_words(rules, extra=()):
    """Every plain word of the rules, and those of `extra`, sorted."""
    found = {word for options in rules.values() for option in options for word in WORD.findall(REFERENCE.sub(" ", option))}
    return sorted(found | set(extra))


class Grammar:
    def __init__(self, random, extra_words=()):
        self.random = random
        self.rules = read_rules()
        self.rules["nouns"] = [ending_in_s(noun) for noun in self.rules["noun"]]
        self.rules["verbs"] = [ending_in_s(verb) for verb in self.rules["verb"] if verb.isalpha()]
        self.words = read_words(self.rules)
        self.extra = list(extra_words) or self.words

    def expand(self, name):
        if name == "salad":
            return self.salad()
        option = self.random.choice(self.rules[name])
        option = MAYBE.sub(lambda match: match[1] if self.random.random() < 0.5 else "", option)
        return REFERENCE.sub(lambda match: self.expand(match[1]), option)

    def salad(self):
        """Words in no order: they teach sounds, not sentences."""
        pick = lambda: self.random.choice(self.words if self.random.random() < 0.5 else self.extra)
        return " ".join(pick() for _ in range(self.random.randint(2, 9)))

    def note(self):
        return self.stumbling(" ".join(self.expand("note").split()))

    def stumbling(self, text):
        """Fillers, words said twice, and now and then a word that nobody expects."""
        out = []
        for word in text.split():
            chance = self.random.random()
            if chance < 0.012:
                out.append(self.random.choice(["uh", "um", "uh", "like", "you know"]))
            elif chance < 0.017:
                out.append(word)
            elif chance < 0.03:
                word = self.random.choice(self.extra)
            out.append(word)
        return " ".join(out)

    def piece(self, longest=20):
        """A note, or a stretch of one, of at most so many words."""
        words = self.note().split()
        if len(words) < longest and self.random.random() < 0.4:
            words += self.note().split()
        longest = self.random.randint(8, longest)
        if len(words) <= longest:
            return " ".join(words)
        start = self.random.choice([0, self.random.randrange(len(words) - longest + 1)])
        return " ".join(words[start : start + longest])
