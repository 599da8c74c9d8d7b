"""What a voice is given to say for a text, and how texts are compared."""
import re

LETTERS = {
    "rv": "R V", "ac": "A C", "tv": "T V", "led": "L E D", "gfci": "G F C I", "usb": "U S B", "lp": "L P",
    "co": "C O", "pvc": "P V C", "abs": "A B S", "psi": "P S I", "epdm": "E P D M", "pex": "pecks",
}  # fmt: skip
PAUSE_BEFORE = {"and", "but", "so", "then", "because", "okay", "which", "well", "now"}


def spoken(text, random):
    """Letters of abbreviations mostly one by one, apostrophes mostly kept, a pause here and there."""
    words = []
    bare = random.random() < 0.3
    for word in text.split():
        if word in PAUSE_BEFORE and words and random.random() < 0.15:
            words[-1] += ","
        said = LETTERS.get(word, word) if random.random() < 0.7 else word
        words.append(said.replace("'", "") if bare else said)
    end = random.choice([".", ".", "", ",", "?"]) if random.random() < 0.5 else ""
    return " ".join(words) + end


def normal(text):
    """Lower case, letters and spaces alone: apostrophes and punctuation do not count as errors."""
    return re.sub(r"[^a-z ]", "", text.lower().replace("-", " ")).split()


def edits(said, heard):
    """Word edits from one list to another (Levenshtein 1966)."""
    row = list(range(len(heard) + 1))
    for i, word in enumerate(said, 1):
        diagonal, row[0] = row[0], i
        for j, other in enumerate(heard, 1):
            diagonal, row[j] = row[j], min(row[j] + 1, row[j - 1] + 1, diagonal + (word != other))
    return row[-1]


def word_error_rate(pairs):
    """Edits over words said, for (said, heard) pairs of texts."""
    lists = [(normal(said), normal(heard)) for said, heard in pairs]
    return sum(edits(said, heard) for said, heard in lists) / max(1, sum(len(said) for said, _ in lists))
