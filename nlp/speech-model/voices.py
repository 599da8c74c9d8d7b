"""The synthetic voices of espeak-ng and flite (both in Debian), and which are kept out of training."""
import subprocess

ACCENTS = ["en-us", "en-us", "en-us", "en-gb", "en-gb", "en-gb-scotland", "en-gb-x-gbclan", "en-gb-x-rp", "en-029", "en-us-nyc"]
VARIANTS = [
    "", "", "", "m1", "m2", "m3", "m4", "m5", "m6", "m8", "f1", "f2", "f3", "f5", "klatt", "klatt2", "klatt4",
    "adam", "Alex", "Alicia", "Andrea", "Andy", "Annie", "antonio", "aunty", "belinda", "benjamin", "boris", "caleb",
    "david", "Denis", "ed", "edward", "Gene", "grandma", "grandpa", "Hugo", "iven", "Jacky", "john", "Lee", "linda",
    "marcelo", "Marco", "Mario", "max", "Michael", "miguel", "Mike", "pablo", "paul", "pedro", "quincy", "rob",
    "robert", "sandro", "shelby", "steph", "steph2", "travis", "victor", "zac", "norbert", "croak",
]  # fmt: skip
FLITE = ["slt", "rms", "awb", "kal16", "slt", "rms", "awb", "kal"]

# Never heard in training: an accent, and variants of each kind. (A diphone voice of another engine, festival's
# kdlpc16k, is kept for the final test alone.)
KEPT_OUT = [("en-gb-x-gbcwmd", "f4"), ("en-gb-x-gbcwmd", "m7"), ("en-us", "f4"), ("en-gb", "m7"), ("en-us", "klatt3"), ("en-gb", "anika")]


def espeak(text, voice, words_a_minute, pitch):
    accent, variant = voice
    name = f"{accent}+{variant}" if variant else accent
    command = ["espeak-ng", "-v", name, "-s", str(words_a_minute), "-p", str(pitch), "--stdout", text]
    return subprocess.run(command, capture_output=True, check=True, timeout=20).stdout


def flite(text, voice, stretch, pitch):
    settings = ["--setf", f"duration_stretch={stretch:.2f}", "--setf", f"int_f0_target_mean={pitch:.0f}"]
    command = ["flite", "-voice", voice, *settings, "-t", text, "-o", "/dev/stdout"]
    return subprocess.run(command, capture_output=True, check=True, timeout=60).stdout


FLITE_PITCH = {"slt": (150, 215), "rms": (75, 125), "awb": (95, 160), "kal16": (85, 140), "kal": (85, 140)}


def pick_voice(random, split):
    """A voice with one manner of speaking: a function from text to the bytes of a WAV file."""
    if split == "kept-out" or random.random() < 0.5:
        voice = random.choice(KEPT_OUT) if split == "kept-out" else (random.choice(ACCENTS), random.choice(VARIANTS))
        rate, pitch = random.randint(125, 205), random.randint(30, 70)
        return "espeak-ng " + "+".join(voice), lambda text: espeak(text, voice, rate, pitch)
    voice = random.choice(FLITE)
    stretch, pitch = random.uniform(0.85, 1.25), random.uniform(*FLITE_PITCH[voice])
    return "flite " + voice, lambda text: flite(text, voice, stretch, pitch)
