import { readdirSync } from "node:fs";
import { request } from "node:http";
import { connect } from "node:net";
import { InputFile } from "grammy";
import { describe, expect, it } from "vitest";
import { knowsHost } from "../../../bot/chat/http/guard.ts";
import { rangeOf } from "../../../bot/chat/http/respond.ts";
import { type Opened, openChat, TOKEN, temporaryFolder } from "./harness.ts";

const JSON_TYPE = { "content-type": "application/json" };

/** Like fetch, but lets a test lie about headers that fetch keeps for itself. */
const ask = (url: string, path: string, headers: Record<string, string>, body?: string) =>
  new Promise<{ status: number; cookie: string; text: string; headers: Record<string, unknown> }>(
    (resolve, reject) => {
      const sent = request(
        new URL(path, url),
        { method: body === undefined ? "GET" : "POST", headers },
        (response) => {
          let text = "";
          response.setEncoding("utf8");
          response.on("data", (part: string) => {
            text += part;
          });
          response.on("end", () => {
            const cookie = response.headers["set-cookie"]?.[0]?.split(";", 1)[0] ?? "";
            resolve({ status: response.statusCode ?? 0, cookie, text, headers: response.headers });
          });
        },
      );
      sent.on("error", reject);
      sent.end(body);
    },
  );

const guest = async ({ url }: Opened) => {
  const { cookie } = await ask(url, "/page/hello", JSON_TYPE, "{}");
  return { ...JSON_TYPE, cookie };
};

const sentence = (text: string) => JSON.stringify({ key: "key-of-doors", text });

describe("the doors of the chat server", () => {
  it("know only this machine's names", async () => {
    const { url } = await openChat();
    const status = async (host: string) => (await ask(url, "/", { host })).status;
    expect(await status("127.0.0.1:80")).toBe(200);
    expect(await status("localhost")).toBe(200);
    expect(await status("rebound.example")).toBe(421);
    expect(await status("192.168.1.7")).toBe(421);
    const open = knowsHost("0.0.0.0");
    expect([open("192.168.1.7:8080"), open("[fe80::1]:80"), open("rebound.example")]).toEqual([
      true,
      true,
      false,
    ]);
  });

  it("open to the trailer's own network only when told to", async () => {
    expect((await openChat()).elsewhere).toEqual([]);
    const { url, elsewhere } = await openChat({ host: "0.0.0.0" });
    for (const address of elsewhere) expect(address).toMatch(/^http:\/\/[\d.]+:\d+\/$/);
    expect((await ask(url, "/", { host: "192.168.1.7:8080" })).status).toBe(200);
    expect((await ask(url, "/", { host: "rebound.example" })).status).toBe(421);
    const reachable = elsewhere[0];
    if (reachable !== undefined) expect((await ask(reachable, `/bot${TOKEN}/getMe`, {})).status).toBe(403);
  });

  it("are shut for other sites' pages", async () => {
    const chat = await openChat();
    const headers = await guest(chat);
    const say = async (more: Record<string, string>) =>
      (await ask(chat.url, "/page/say", { ...headers, ...more }, sentence("x"))).status;
    expect(await say({ origin: "http://evil.example" })).toBe(403);
    expect(await say({ origin: "http://127.0.0.1:1" })).toBe(403);
    expect(await say({ "sec-fetch-site": "cross-site" })).toBe(403);
    expect(await say({ "sec-fetch-site": "same-site" })).toBe(403);
    expect((await ask(chat.url, `/bot${TOKEN}/getMe`, { origin: "http://evil.example" })).status).toBe(403);
    expect(await chat.api.getUpdates()).toEqual([]);
    expect(await say({ origin: new URL(chat.url).origin, "sec-fetch-site": "same-origin" })).toBe(200);
  });

  it("ask for the person's secret", async () => {
    const chat = await openChat();
    const status = async (path: string, cookie: string, body?: string) =>
      (await ask(chat.url, path, { ...JSON_TYPE, cookie }, body)).status;
    for (const cookie of ["", "holdfast=short", `holdfast=${"x".repeat(32)}`]) {
      expect(await status("/page/say", cookie, sentence("x"))).toBe(401);
      expect(await status("/page/history?before=9", cookie)).toBe(401);
      expect(await status("/page/events", cookie)).toBe(401);
      expect(await status("/page/file/x", cookie)).toBe(401);
    }
  });

  it("do not let one person touch another's messages", async () => {
    const chat = await openChat();
    const [wren, otto] = [await guest(chat), await guest(chat)];
    await ask(chat.url, "/page/say", wren, sentence("mine"));
    const edit = JSON.stringify({ message: 1, text: "theirs" });
    expect((await ask(chat.url, "/page/edit", otto, edit)).status).toBe(404);
    expect((await ask(chat.url, "/page/history?before=99", otto)).text).toBe('{"messages":[],"more":false}');
    expect((await ask(chat.url, "/page/edit", wren, edit)).status).toBe(200);
  });

  it("say in words what is wrong with a request", async () => {
    const chat = await openChat();
    const headers = await guest(chat);
    const error = async (path: string, body: string) => {
      const { status, text } = await ask(chat.url, path, headers, body);
      return [status, (JSON.parse(text) as { error: string }).error];
    };
    expect(await error("/page/say", sentence("x".repeat(100_001)))).toEqual([
      413,
      "That is longer than 100,000 characters. Send it in parts, or as a file.",
    ]);
    expect(await error("/page/say", sentence(" "))).toEqual([400, "There was nothing in that message."]);
    expect((await error("/page/say", "{"))[0]).toBe(400);
    expect((await error("/page/say", '{"key":"../../../x","text":"x"}'))[0]).toBe(400);
    expect((await error("/page/file?key=key-00000001&kind=document&name=x", ""))[1]).toBe(
      "That file is empty.",
    );
    expect((await error("/page/toString", "{}"))[0]).toBe(404);
    expect(chat.faults).toEqual([]);
  });

  it("refuse a body that is too large, whether its length is told or not", async () => {
    const chat = await openChat();
    const { cookie } = await guest(chat);
    const path = `${chat.url}page/file?key=key-00000001&kind=document&name=x`;
    const bytes = Buffer.alloc(21 * 1024 * 1024);
    const told = await fetch(path, { method: "POST", headers: { cookie }, body: bytes });
    expect(told.status).toBe(413);
    const stream = new Blob([bytes]).stream();
    const untold = await fetch(path, {
      method: "POST",
      headers: { cookie },
      body: stream,
      duplex: "half",
    });
    expect(untold.status).toBe(413);
    expect((await chat.api.getUpdates()).length).toBe(0);
  });

  it("give only files that were sent, by no other path", async () => {
    const filesDir = temporaryFolder();
    const chat = await openChat({ filesDir });
    const { person } = chat.server.join("Wren");
    const nasty = new InputFile(Buffer.from("x"), "..%2f..\\..:etc.pass\u202ewd.html");
    const { document } = await chat.api.sendDocument(person.chat, nasty);
    expect(document.file_name).not.toMatch(/[/\\:\u202e]/);
    const { file_path: path = "" } = await chat.api.getFile(document.file_id);
    expect(path).toMatch(/^documents\/[\w-]{24}\.[a-z0-9]+$/);
    expect(readdirSync(filesDir)).toEqual(["documents"]);
    const status = async (asked: string) => (await ask(chat.url, `/file/bot${TOKEN}/${asked}`, {})).status;
    expect(await status(path)).toBe(200);
    for (const other of [
      "../secret",
      "%2e%2e/x",
      "%2e%2e%2f%2e%2e%2fx",
      document.file_id,
      `voice/${document.file_id}.html`,
      `${path}.part`,
    ]) {
      expect([404, 403]).toContain(await status(other));
    }
  });

  it("serve what a person may play or save, and nothing that runs", async () => {
    const chat = await openChat();
    const { person, secret } = chat.server.join("Wren");
    const page = new InputFile(Buffer.from("<script>alert(1)</script>"), "log.html");
    const voice = new InputFile(Buffer.from("0123456789"), "v.ogg");
    const { document } = await chat.api.sendDocument(person.chat, page);
    const sent = await chat.api.sendVoice(person.chat, voice, { duration: 3 });
    const cookie = `holdfast=${secret}`;
    const paper = await ask(chat.url, `/page/file/${document.file_id}`, { cookie });
    expect(paper.headers).toMatchObject({
      "content-type": "application/octet-stream",
      "content-disposition": "attachment; filename*=UTF-8''log.html",
      "content-security-policy": "default-src 'none'; sandbox",
      "x-content-type-options": "nosniff",
    });
    const part = await ask(chat.url, `/page/file/${sent.voice.file_id}`, { cookie, range: "bytes=2-4" });
    expect([part.status, part.text, part.headers["content-range"], part.headers["content-type"]]).toEqual([
      206,
      "234",
      "bytes 2-4/10",
      "audio/ogg",
    ]);
  });

  it("put the same safe headers on the page", async () => {
    const { url } = await openChat();
    const { headers } = await ask(url, "/", {});
    expect(headers["content-security-policy"]).toContain("default-src 'none'");
    expect(headers["content-security-policy"]).not.toContain("unsafe");
    expect(headers).not.toHaveProperty("access-control-allow-origin");
    expect(headers).toMatchObject({ "x-content-type-options": "nosniff", "x-frame-options": "DENY" });
    expect((await ask(url, "/../package.json", {})).status).toBe(404);
    expect((await ask(url, "/types.d.ts", {})).status).toBe(404);
  });

  it("stay open for others while one client sends slowly or rubbish", async () => {
    const { url, api } = await openChat();
    const port = Number(new URL(url).port);
    const slow = connect(port, "127.0.0.1");
    slow.write("POST /page/say HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 1000\r\n\r\n{");
    const rubbish = connect(port, "127.0.0.1");
    rubbish.on("error", () => undefined);
    rubbish.write("\u0000\u0001 not http\r\n\r\n");
    expect((await api.getMe()).id).toBe(77);
    slow.destroy();
    rubbish.destroy();
  });

  it("resume a stream of events after the last change that was seen, and say what the log is called", async () => {
    const chat = await openChat();
    const { person, secret } = chat.server.join("Wren");
    for (const text of ["one", "two", "three"]) await chat.api.sendMessage(person.chat, text);
    await chat.api.deleteMessage(person.chat, 2);
    chat.server.rename("Magpie");
    const response = await fetch(`${chat.url}page/events?after=1`, {
      headers: { cookie: `holdfast=${secret}` },
    });
    const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader();
    let text = "";
    while (!text.includes('"id":2')) text += (await reader?.read())?.value ?? "";
    await reader?.cancel();
    const events = [...text.matchAll(/^data: (.+)$/gm)].map(([, data = ""]) => JSON.parse(data) as object);
    expect(events).toMatchObject([
      { kind: "title", title: "Magpie" },
      { kind: "message", id: 3, message: { text: "three" } },
      { kind: "message", id: 2, message: null },
    ]);
    expect(text.match(/^id: (\d+)$/gm)).toEqual(["id: 3", "id: 4"]);
  });

  it("say which port is taken", async () => {
    const { url } = await openChat();
    await expect(openChat({ port: Number(new URL(url).port) })).rejects.toMatchObject({ code: "EADDRINUSE" });
  });
});

describe("ranges of bytes", () => {
  it.each([
    ["bytes=0-3", { start: 0, end: 3 }],
    ["bytes=4-", { start: 4, end: 9 }],
    ["bytes=-3", { start: 7, end: 9 }],
    ["bytes=0-99", { start: 0, end: 9 }],
    ["bytes=9-2", undefined],
    ["bytes=-", undefined],
    ["lines=1-2", undefined],
    [undefined, undefined],
  ])("%s of 10", (header, range) => {
    expect(rangeOf(header, 10)).toEqual(range);
  });
});
