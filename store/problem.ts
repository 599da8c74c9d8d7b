export type StoreProblemKind = "in-use" | "corrupt" | "read-only" | "full" | "no-folder" | "too-new";

/** A reason why the data cannot be opened or written; the message says what to do next. */
export class StoreProblem extends Error {
  override readonly name = "StoreProblem";
  readonly kind: StoreProblemKind;

  constructor(kind: StoreProblemKind, message: string, options?: ErrorOptions) {
    super(message, options);
    this.kind = kind;
  }
}

const codeOf = (error: unknown): string =>
  typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";

/** Words an SQLite or file-system error for the person who runs the program; undefined when it is none of ours. */
export const asStoreProblem = (error: unknown, file: string): StoreProblem | undefined => {
  if (error instanceof StoreProblem) return error;
  const code = codeOf(error);
  const problem = (kind: StoreProblemKind, message: string) =>
    new StoreProblem(kind, message, { cause: error });
  if (code.startsWith("SQLITE_CORRUPT") || code === "SQLITE_NOTADB") {
    return problem(
      "corrupt",
      `${file} is damaged and was left untouched. Restore a backup: npm run restore -- BACKUP.`,
    );
  }
  if (code.startsWith("SQLITE_FULL") || code === "ENOSPC") {
    return problem(
      "full",
      `The disk that holds ${file} is full. Free some space and start again; nothing was lost.`,
    );
  }
  if (code.startsWith("SQLITE_READONLY") || code === "EACCES" || code === "EROFS" || code === "EPERM") {
    return problem(
      "read-only",
      `${file} cannot be written. Check who owns the folder, or set HOLDFAST_HOME to another.`,
    );
  }
  if (code.startsWith("SQLITE_CANTOPEN") || ["ENOTDIR", "ENOENT", "EEXIST"].includes(code)) {
    return problem(
      "no-folder",
      `${file} cannot be opened. Check the folder, or set HOLDFAST_HOME to another.`,
    );
  }
  return undefined;
};
