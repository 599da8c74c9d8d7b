import { randomUUID } from "node:crypto";
import type { Message } from "grammy/types";

type Json = Record<string, unknown>;

/** A person at the chat page, over HTTP, without a browser. */
export class PageClient {
  private readonly url: string;
  private cookie = "";

  constructor(url: string) {
    this.url = url;
  }

  async enter(secret?: string): Promise<void> {
    const response = await this.post("hello", secret === undefined ? {} : { as: secret });
    this.cookie = response.headers.get("set-cookie")?.split(";")[0] ?? "";
  }

  cookieHeader(): string {
    return this.cookie;
  }

  /** Goes on as a person who entered before. */
  useCookie(cookie: string): void {
    this.cookie = cookie;
  }

  /** Sends a text; the same key twice is one message. */
  async say(text: string, key: string = randomUUID(), replyTo?: number): Promise<Message> {
    const body = await this.json("say", { key, text, ...(replyTo === undefined ? {} : { replyTo }) });
    return body["message"] as Message;
  }

  async edit(message: number, text: string): Promise<void> {
    await this.json("edit", { message, text });
  }

  async tap(message: number, data: string): Promise<void> {
    await this.json("tap", { key: randomUUID(), message, data });
  }

  async upload(kind: string, name: string, bytes: Uint8Array<ArrayBuffer>, mime: string): Promise<void> {
    const query = new URLSearchParams({ key: randomUUID(), kind, name });
    await fetch(`${this.url}page/file?${query.toString()}`, {
      method: "POST",
      headers: { cookie: this.cookie, "content-type": mime, origin: new URL(this.url).origin },
      body: bytes,
    });
  }

  /** Everything in the chat, oldest first. */
  async messages(): Promise<Message[]> {
    const all: Message[] = [];
    for (let before = Number.MAX_SAFE_INTEGER; ; ) {
      const response = await fetch(`${this.url}page/history?before=${before}`, {
        headers: { cookie: this.cookie },
      });
      const { messages, more } = (await response.json()) as { messages: Message[]; more: boolean };
      all.unshift(...messages);
      const [first] = all;
      if (!more || first === undefined) return all;
      before = first.message_id;
    }
  }

  private post(act: string, body: Json): Promise<Response> {
    return fetch(`${this.url}page/${act}`, {
      method: "POST",
      headers: { "content-type": "application/json", cookie: this.cookie, origin: new URL(this.url).origin },
      body: JSON.stringify(body),
    });
  }

  private async json(act: string, body: Json): Promise<Json> {
    const response = await this.post(act, body);
    const given = (await response.json()) as Json;
    if (!response.ok) throw new Error(`${response.status}: ${String(given["error"])}`);
    return given;
  }
}
