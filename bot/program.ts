import { randomBytes } from "node:crypto";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { createChatLog } from "../store/chat-log.ts";
import { DATABASE_FILE, holdFolder, openDatabase } from "../store/open.ts";
import { Store } from "../store/store.ts";
import { type ChatServer, createChatServer } from "./chat/server.ts";
import type { Clock } from "./clock.ts";
import { type Config, type Messenger, mediaFolder } from "./config.ts";
import { awaitsPairing, pairingCode } from "./conversation/pair.ts";
import { createLog } from "./log.ts";
import { sendNudges } from "./nudges/send-nudges.ts";
import { foundRig, hemisphereOf, rigOf, UNNAMED } from "./rig/rig.ts";
import { createEar, modelPlaces } from "./workers/ear.ts";
import { createInboxWorker } from "./workers/inbox-worker.ts";
import { type Line, openLine } from "./workers/line.ts";
import { createScheduler } from "./workers/scheduler.ts";
import { startVoice } from "./workers/voice.ts";

export type Program = {
  readonly store: Store;
  readonly chat: ChatServer;
  /** Where the chat page is. */
  readonly url: string;
  /** Its addresses for other machines on the trailer's network, when it is open to them. */
  readonly elsewhere: readonly string[];
  /** Sends what is due now; true when something was. */
  readonly nudge: () => boolean;
  readonly stop: () => Promise<void>;
};

export type Surroundings = {
  readonly clock: Clock;
  /** Words for whoever started the program. */
  readonly say: (sentence: string) => void;
  /** Something after which the program cannot go on; it must end at once. */
  readonly onFatal: (error: unknown) => void;
  /** Whether nudges are sent by the program's own timer or only when asked to. */
  readonly scheduler?: "timer" | "by-hand";
  /** Whether the small model for trying out may serve when there are no other weights. */
  readonly sampleModel?: boolean;
};

const PAGE = "page";
const MESSENGER = "messenger";
const PAGE_TOKEN_KEY = "page.token";

const pageToken = (store: Store): string => {
  const kept = z.string().optional().parse(store.settings.get(PAGE_TOKEN_KEY));
  if (kept !== undefined) return kept;
  const token = `1:${randomBytes(24).toString("base64url")}`;
  store.settings.put(PAGE_TOKEN_KEY, token);
  return token;
};

const found = (store: Store): void => {
  const { zone } = rigOf(store);
  foundRig(store, { zone, hemisphere: hemisphereOf(zone) });
  if (store.people.chats().length === 0) pairingCode(store);
};

/** Starts everything: the data, the chat page, the messenger when there is a token. Throws StoreProblem. */
export const startProgram = async (config: Config, around: Surroundings): Promise<Program> => {
  const { clock, say, onFatal } = around;
  const folder = holdFolder(config.home);
  const store = new Store(openDatabase(join(config.home, DATABASE_FILE), { check: true }));
  const mediaDir = mediaFolder(config.home);
  mkdirSync(mediaDir, { recursive: true, mode: 0o700 });
  found(store);
  const token = pageToken(store);
  const log = createLog(config.logLevel, [
    token,
    ...(config.messenger === null ? [] : [config.messenger.token]),
  ]);

  const chat = createChatServer({
    log: createChatLog(store.db),
    token,
    filesDir: mediaDir,
    host: config.page.host,
    port: config.page.port,
    title: pageTitle(store),
    now: () => clock.now().epochMilliseconds,
    onFault: (error) => log.error({ fault: String(error) }, "the chat page had a fault"),
  });
  const { url, apiRoot, elsewhere } = await chat.start();

  const ear = createEar(modelPlaces(config.home, config.model, around.sampleModel === true), config.language);
  await ear.look();
  const lines: Line[] = [];
  const send = (): void => {
    for (const line of lines) line.wake();
  };
  const sourceOf = (channel: string) => lines.find((line) => line.channel === channel)?.files;
  const voice = startVoice({ store, clock, mediaDir, ear, sourceOf, log, onSaid: send });
  const showName = nameShower(store, chat);
  const inbox = createInboxWorker({
    deps: { store, hears: { ready: () => ear.hearing() !== undefined } },
    clock,
    log,
    onHandled: () => {
      send();
      voice.wake();
      showName();
    },
    onFatal,
  });
  const open = (channel: string, way: Messenger): void =>
    void lines.push(
      openLine({
        ...way,
        channel,
        store,
        clock,
        mediaDir,
        log,
        onStored: inbox.wake,
        onUnkept: onFatal,
        say,
      }),
    );
  open(PAGE, { token, apiRoot });
  if (config.messenger !== null) open(MESSENGER, config.messenger);

  inbox.wake();
  voice.wake();
  send();
  const nudge = (): boolean => {
    const { sent } = sendNudges(store, clock.now());
    if (sent) send();
    return sent;
  };
  const scheduler = around.scheduler === "by-hand" ? undefined : createScheduler(nudge, onFatal);

  const stop = async (): Promise<void> => {
    scheduler?.stop();
    inbox.stop();
    await Promise.all(lines.map((line) => line.stop()));
    await voice.stop();
    await chat.stop();
    store.close();
    folder.release();
  };
  return { store, chat, url, elsewhere, nudge, stop };
};

/** Keeps the name over the chat that of the rig. */
const nameShower = (store: Store, chat: ChatServer) => {
  let shown = pageTitle(store);
  return (): void => {
    const name = pageTitle(store);
    if (name !== shown) chat.rename(name);
    shown = name;
  };
};

/** The rig's name stands over the chat, once it has one. */
const pageTitle = (store: Store): string => {
  const { name } = rigOf(store);
  return name === UNNAMED ? "Holdfast" : name;
};

/** The page's address; with the code in it while nobody is paired yet. */
export const pageAddress = ({ store, url }: Program): string =>
  awaitsPairing(store) ? `${url}#code=${pairingCode(store)}` : url;
