import cues from "./cues.json" with { type: "json" };

/** A stretch of a message that may put one thing right. */
export type Piece = {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** Lower case, no marks or apostrophes, one blank between words. */
  readonly words: string;
};

/** How plainly the words announce that something is put right. */
export type Strength = "strong" | "weak" | "none";

export type Opened = { readonly strength: Strength; readonly removes: boolean; readonly body: string };

export const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/['’`]/g, "")
    .replace(/[^\p{L}\p{N}$£€.,]+|[.,](?!\d)/gu, " ")
    .replace(/ +/g, " ")
    .trim();

/** One of these, as a piece of a regular expression. */
export const anyOf = (words: readonly string[]): string => `(?:${words.join("|")})`;

/** Where one statement ends and the next may begin. */
const SEAMS =
  /[.;!?\n]+(?=\s|$)(?!\s+not (?:the |a |an |in |on )?\w+(?: \w+)?\W*$)|,\s+(?!not (?:the |a |an )?\w+(?: \w+)?\s*(?:$|[.!?;]))|\s+(?:and|but|also|plus|oh)\s+(?=(?:also|the|it|that|i|we|my|cost|not|number)\b)|\s+(?=(?:(?:it|that|he|she|they) (?:was|were|is|should|wasn|isn|cost|came)|i (?:meant|mean)(?!\s*[.!]*$)|i used|thats|that's|its|it's|make (?:that|it))\b)/gi;

const pieceAt = (text: string, start: number, end: number): Piece => {
  const own = text.slice(start, end);
  return { start, end, text: own, words: plain(own) };
};

export const piecesOf = (text: string): readonly Piece[] => {
  const seams = [...text.matchAll(SEAMS)];
  const starts = [0, ...seams.map((seam) => seam.index + seam[0].length)];
  const ends = [...seams.map((seam) => seam.index), text.length];
  return starts
    .map((start, at) => pieceAt(text, start, ends[at] ?? text.length))
    .filter((piece) => piece.words !== "");
};

type Cue = { readonly phrase: string; readonly kind: "strong" | "weak" | "filler" | "remove" };

const CUES: readonly Cue[] = (["strong", "weak", "filler", "remove"] as const)
  .flatMap((kind) => cues[kind].map((phrase) => ({ phrase, kind })))
  .sort((a, b) => b.phrase.length - a.phrase.length || (a.kind === "remove" ? -1 : 1));

/** "No" before these denies what was said; before other words it counts something ("no leaks since"). */
const AFTER_NO =
  /^(?:$|it|its|that|thats|this|i|im|we|the|my|make|not|sorry|wait|hang|hold|scratch|scrap|strike|actually|on|in|at|with|by|last|yesterday|today|correction|wrong|rear|front|left|right|back|upper|lower|just|only|dont|never|should|number|he|she|they|its|change|delete|forget|ignore|cost|for|a|an|no|nope|more like|closer|man|mate|buddy|love|honey|dear|dude|bro|boss|monday|tuesday|wednesday|thursday|friday|saturday|sunday|january|february|march|april|may|june|july|august|september|october|november|december|[$£€\d])/;

/** "Scratch the bearings one", "delete number two". */
const REMOVAL =
  /^(?:(?:scratch|delete|erase|strike)(?= (?:number |the (?:\w+ ){0,4}(?:one|entry|record|note|job)$|my last|both$|all of|the last))|remove(?= (?:number |(?:the|that) (?:\w+ ){0,3}(?:entry|record|note)$|the last (?:one|entry))))/;

const NOES: ReadonlySet<string> = new Set(["no", "nope", "nah", "naw"]);

const isCue = (body: string, { phrase }: Cue): boolean => {
  if (body !== phrase && !body.startsWith(`${phrase} `)) return false;
  const after = body.slice(phrase.length).trim();
  return !NOES.has(phrase) || AFTER_NO.test(after);
};

/** "Change the date to", "the cost was wrong". */
const ORDER =
  /^(?:(?:change|set|make|update|correct|fix|edit|amend) (?:the |its |that )?(?:component|part|thing|place|location|side|date|day|month|year|cost|price|amount|material|materials|stuff|action|work|outcome)(?: on (?:it|that))? (?:to|as|into|should be)|(?:the )?(?:component|part|place|side|date|day|month|year|cost|price|amount|material|name|thing)s? (?:is|was|were|are) (?:all )?(?:wrong|off|not right|incorrect))\b/;

const cueAt = (body: string): Cue | undefined => {
  const order = ORDER.exec(body);
  if (order !== null) return { phrase: order[0], kind: "strong" };
  const verb = REMOVAL.exec(body);
  return verb === null ? CUES.find((cue) => isCue(body, cue)) : { phrase: verb[0], kind: "remove" };
};

/** Takes the openings off: "no wait, make that". */
export const opened = (words: string): Opened => {
  let body = words;
  let strength: Strength = "none";
  let removes = false;
  for (let cue = cueAt(body); cue !== undefined; cue = cueAt(body)) {
    body = body.slice(cue.phrase.length).trim();
    removes ||= cue.kind === "remove";
    if (cue.kind === "strong" || cue.kind === "remove") strength = "strong";
    if (cue.kind === "weak" && strength === "none") strength = "weak";
  }
  return { strength, removes, body };
};

/** "Sorry, I was wrong": opens by owning up to a slip, with more than a bare "no". */
export const ownsAtOnce = (words: string): boolean => {
  let body = words;
  for (let cue = cueAt(body); cue !== undefined; cue = cueAt(body)) {
    if (cue.kind === "strong" && !NOES.has(cue.phrase)) return true;
    body = body.slice(cue.phrase.length).trim();
  }
  return false;
};

export const says = (words: string, phrases: readonly string[]): boolean =>
  phrases.some((phrase) => ` ${words} `.includes(` ${phrase} `));
