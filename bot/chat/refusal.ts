/** A request that is answered with an error. `code` is an HTTP status, the message is for the caller's eyes. */
export class Refusal extends Error {
  override readonly name = "Refusal";
  readonly code: number;

  constructor(code: number, message: string) {
    super(message);
    this.code = code;
  }
}

/** A refusal in the Bot API's words. */
export const badRequest = (what: string): Refusal => new Refusal(400, `Bad Request: ${what}`);
