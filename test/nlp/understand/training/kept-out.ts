/** Never learnt from: what is measured on them holds for words that nobody tuned to. */
export const KEPT_OUT: ReadonlySet<string> = new Set([
  "conversations-2.jsonl",
  "conversations-15.jsonl",
  "conversations-20.jsonl",
  "conversations-23.jsonl",
  "conversations-25.jsonl",
  "conversations-31.jsonl",
  "conversations-41.jsonl",
  "conversations-48.jsonl",
  "corrections-12.jsonl",
  "older-8.jsonl",
  "questions-12.jsonl",
  "chat-2.jsonl",
  "notes-10.jsonl",
  "notes-12.jsonl",
  "notes-31.jsonl",
  "notes-60.jsonl",
]);
