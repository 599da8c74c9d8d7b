// @ts-check
import { createAlerts } from "./alerts.js";
import { createComposer } from "./composer.js";
import { createConversation } from "./conversation.js";
import { byId } from "./dom.js";
import { openDrawer } from "./drawer.js";
import { invitation } from "./invitation.js";
import { keepPage } from "./keep-page.js";
import { listen } from "./live.js";
import { isMine } from "./message-view.js";
import { createOutbox } from "./outbox.js";
import { createPicked } from "./picked.js";
import { createRecorder } from "./recorder.js";
import { hello, rename } from "./server-calls.js";
import { createSigns } from "./signs.js";
import { createCommandSlip, createYouSlip } from "./slips.js";
import { createWaitingView } from "./waiting-view.js";

/** @typedef {import("./types.js").Message} Message */
/** @typedef {import("./types.js").ChatEvent} ChatEvent */

const MAX_SAID = 100_000;

const invited = invitation();
const signs = createSigns();
const alert = createAlerts();
let lastChange = 0;
let welcomed = false;

const conversation = createConversation(
  {
    tap: (message, data) => {
      conversation.rest(message.message_id);
      void outbox.push({ act: "tap", message: message.message_id, data });
    },
    reply: (message) => composer.reply(message),
    change: (message) => composer.change(message),
    copy: (message) => void copy(message.text ?? message.caption ?? ""),
    show: (id) => {
      if (!conversation.lead(id)) signs.notice("That message is further up.");
    },
  },
  {
    unseen: (message) => {
      signs.unseen();
      void alert(message);
    },
  },
);

/** @param {string} text */
const copy = async (text) => {
  try {
    await navigator.clipboard.writeText(text);
    signs.notice("Copied.");
  } catch {
    signs.notice("This browser does not let the page copy. Select the words instead.");
  }
};

const showCommands = createCommandSlip((text) => void outbox.push({ act: "say", text }));
const showYou = createYouSlip((name) => {
  rename(name).then(
    ({ name: kept }) => showYou(kept),
    ({ message }) => signs.notice(message),
  );
});

const welcome = async () => {
  const { title, name, commands, change, messages, more } = await hello(welcomed ? undefined : invited.as);
  signs.named(title);
  showYou(name);
  showCommands(commands);
  if (welcomed) {
    // The log is older than what is shown, as after a backup was brought back: begin anew.
    if (change < lastChange) location.reload();
    return;
  }
  conversation.fill(messages, more);
  conversation.toEnd();
  lastChange = change;
  welcomed = true;
};

const outbox = await createOutbox(await openDrawer(), {
  changed: createWaitingView(byId("waiting", HTMLOListElement), {
    again: (key) => void outbox.again(key),
    drop: (key) => void outbox.drop(key),
  }),
  sent: (_waiting, { message }) => {
    if (message) conversation.put(message);
  },
  tapRefused: signs.notice,
  stranger: welcome,
});

/** @param {ChatEvent} event */
const heard = async (event) => {
  switch (event.kind) {
    case "message": {
      if (event.message && isMine(event.message)) await outbox.idle();
      lastChange = Math.max(lastChange, event.change);
      if (event.message && !isMine(event.message)) signs.done();
      if (event.message) conversation.put(event.message);
      else conversation.remove(event.id);
      return;
    }
    case "action":
      return signs.doing(event.action);
    case "notice":
      return signs.notice(event.text);
    case "commands":
      return showCommands(event.commands);
    case "title":
      return signs.named(event.title);
  }
};

const picked = createPicked({ notice: signs.notice, picked: () => composer.focus() });

/** @param {string} text @param {import("./composer.js").About} about */
const send = (text, about) => {
  if (text.length > MAX_SAID) {
    signs.notice(
      `That is ${text.length.toLocaleString()} characters; at most ${MAX_SAID.toLocaleString()} fit. Send it in parts, or as a file.`,
    );
    return false;
  }
  if (text.trim() === "" && picked.count() === 0) return false;
  const replyTo = about.deed === "reply" ? { replyTo: about.message.message_id } : {};
  if (about.deed === "change") void outbox.push({ act: "edit", message: about.message.message_id, text });
  else if (picked.count() === 0) void outbox.push({ act: "say", text, ...replyTo });
  else
    for (const [place, file] of picked.take(text).entries())
      void outbox.push({ ...file, ...(place === 0 && replyTo) });
  requestAnimationFrame(conversation.toEnd);
  return true;
};

const composer = createComposer({ send, lastOwn: conversation.lastOwn, pasted: picked.add });

createRecorder({
  notice: signs.notice,
  recorded: (note) => void outbox.push({ act: "file", kind: "voice", ...note }),
});

let inOrder = Promise.resolve();
const begin = () =>
  listen({
    after: () => lastChange,
    heard: (event) => {
      inOrder = inOrder.then(() => heard(event));
    },
    connected: (is) => {
      signs.connected(is);
      if (is) void outbox.flush();
    },
    lost: welcome,
  });

const start = async () => {
  try {
    await welcome();
    begin();
    if (invited.code !== undefined) void outbox.push({ act: "say", text: `/start ${invited.code}` });
  } catch {
    signs.connected(false);
    setTimeout(start, 1000);
  }
};

void start();
void keepPage();
if (matchMedia("(pointer: fine)").matches) composer.focus();
