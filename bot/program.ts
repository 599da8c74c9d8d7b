import { randomBytes } from "node:crypto";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { createChatLog } from "../store/chat-log.ts";
import { DATABASE_FILE, holdFolder, openDatabase } from "../store/open.ts";
import { Store } from "../store/store.ts";
import { type ChatServer, createChatServer } from "./chat/server.ts";
import type { Clock } from "./clock.ts";
import { type Config, mediaFolder } from "./config.ts";
import { takeHeard } from "./conversation/heard.ts";
import { awaitsPairing, pairingCode } from "./conversation/pair.ts";
import { createLog } from "./log.ts";
import { sendNudges } from "./nudges/send-nudges.ts";
import { foundRig, hemisphereOf, rigOf, UNNAMED } from "./rig/rig.ts";
import { createEar, modelPlaces } from "./workers/ear.ts";
import { createHearingWorker } from "./workers/hearing-worker.ts";
import { createInboxWorker } from "./workers/inbox-worker.ts";
import { createMediaWorker, type FileSource } from "./workers/media-worker.ts";
import { createPoller, type Poller } from "./workers/poller.ts";
import { createScheduler } from "./workers/scheduler.ts";
import { createSender, type Sender } from "./workers/sender.ts";

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

/** Weights and sounds may appear while the program runs. */
const LISTEN_EVERY_MS = 20_000;
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

const found = (store: Store, clock: Clock): void => {
  const { zone } = rigOf(store);
  foundRig(store, { zone, hemisphere: hemisphereOf(zone) });
  if (store.people.chats().length === 0) pairingCode(store);
  store.settings.put("program.last-start", clock.now().toString());
};

type Line = {
  readonly channel: string;
  readonly poller: Poller;
  readonly sender: Sender;
  readonly files: FileSource;
};

/** Starts everything: the data, the chat page, the messenger when there is a token. Throws StoreProblem. */
export const startProgram = async (config: Config, around: Surroundings): Promise<Program> => {
  const folder = holdFolder(config.home);
  const store = new Store(openDatabase(join(config.home, DATABASE_FILE), { check: true }));
  const mediaDir = mediaFolder(config.home);
  mkdirSync(mediaDir, { recursive: true, mode: 0o700 });
  found(store, around.clock);
  const token = pageToken(store);
  const log = createLog(config.logLevel, [
    token,
    ...(config.messenger === null ? [] : [config.messenger.token]),
  ]);

  const lines: Line[] = [];
  const wakeSenders = (): void => {
    for (const { sender } of lines) sender.wake();
  };
  const showName = (): void => {
    const name = pageTitle(store);
    if (name !== shownName) chat.rename(name);
    shownName = name;
  };
  let shownName = pageTitle(store);
  const ear = createEar(modelPlaces(config.home, config.model, around.sampleModel === true));
  await ear.look();
  const deps = { store, hears: { ready: () => ear.hearing() !== undefined } };
  const hearing = createHearingWorker({
    store,
    clock: around.clock,
    mediaDir,
    ear: ear.hearing,
    log,
    onSaid: wakeSenders,
  });
  const media = createMediaWorker({
    store,
    mediaDir,
    sourceOf: (channel) => lines.find((line) => line.channel === channel)?.files,
    log,
    onFetched: () => hearing.wake(),
    onLost: (lost) => {
      takeHeard({ store, now: around.clock.now() }, lost, { tag: "no-file" });
      wakeSenders();
    },
  });
  const listenOn = (): void =>
    void ear.look().then(
      () => hearing.wake(),
      (error: unknown) => log.error({ fault: String(error) }, "no weights"),
    );
  const worker = createInboxWorker({
    deps,
    clock: around.clock,
    log,
    onHandled: () => {
      wakeSenders();
      media.wake();
      showName();
    },
    onFatal: around.onFatal,
  });

  const openLine = (channel: string, lineToken: string, apiRoot: string): Line => {
    const poller = createPoller({
      channel,
      token: lineToken,
      apiRoot,
      store,
      clock: around.clock,
      log,
      onStored: () => worker.wake(),
      onUnkept: around.onFatal,
      say: around.say,
    });
    const sender = createSender({ channel, api: poller.bot.api, store, mediaDir, log });
    const fileUrl = (path: string): string => `${apiRoot}/file/bot${lineToken}/${path}`;
    return { channel, poller, sender, files: { api: poller.bot.api, fileUrl } };
  };

  const chat = createChatServer({
    log: createChatLog(store.db),
    token,
    filesDir: mediaDir,
    host: config.page.host,
    port: config.page.port,
    title: pageTitle(store),
    now: () => around.clock.now().epochMilliseconds,
    onFault: (error) => log.error({ fault: String(error) }, "the chat page had a fault"),
  });
  const { url, apiRoot, elsewhere } = await chat.start();
  lines.push(openLine(PAGE, token, apiRoot));
  if (config.messenger !== null)
    lines.push(openLine(MESSENGER, config.messenger.token, config.messenger.apiRoot));

  const polling = lines.map(({ poller }) => poller.start());
  worker.wake();
  wakeSenders();
  media.wake();
  hearing.wake();
  const listening = setInterval(listenOn, LISTEN_EVERY_MS);
  const nudge = (): boolean => {
    const { sent } = sendNudges(store, around.clock.now());
    if (sent) wakeSenders();
    return sent;
  };
  const scheduler = around.scheduler === "by-hand" ? undefined : createScheduler(nudge, around.onFatal);

  const stop = async (): Promise<void> => {
    scheduler?.stop();
    clearInterval(listening);
    await Promise.all(lines.map(({ poller }) => poller.stop()));
    await Promise.allSettled(polling);
    worker.stop();
    await Promise.all([media.stop(), hearing.stop()]);
    ear.close();
    await Promise.all(lines.map(({ sender }) => sender.stop()));
    await chat.stop();
    store.close();
    folder.release();
  };
  return { store, chat, url, elsewhere, nudge, stop };
};

/** The rig's name stands over the chat, once it has one. */
const pageTitle = (store: Store): string => {
  const { name } = rigOf(store);
  return name === UNNAMED ? "Holdfast" : name;
};

/** The page's address; with the code in it while nobody is paired yet. */
export const pageAddress = ({ store, url }: Program): string =>
  awaitsPairing(store) ? `${url}#code=${pairingCode(store)}` : url;
