// @ts-check
import { byId } from "./dom.js";
import { span } from "./times.js";

/** What a recorder may write, the one that phones send first. */
const FORMATS = [
  { type: "audio/ogg;codecs=opus", ending: "ogg" },
  { type: "audio/webm;codecs=opus", ending: "webm" },
  { type: "audio/mp4", ending: "m4a" },
];
const LONGEST_SECONDS = 30 * 60;

const format = () =>
  typeof MediaRecorder === "undefined" || !navigator.mediaDevices
    ? undefined
    : FORMATS.find(({ type }) => MediaRecorder.isTypeSupported(type));

/** @param {MediaStream} stream */
const silence = (stream) => {
  for (const track of stream.getTracks()) track.stop();
};

/**
 * Records voice notes, where the browser can.
 * @param {{ recorded: (note: { name: string, bytes: Blob, durationSeconds: number }) => void, notice: (words: string) => void }} tell
 */
export const createRecorder = (tell) => {
  const found = format();
  const start = byId("record", HTMLButtonElement);
  if (!found) return;
  const bar = byId("recording", HTMLElement);
  const composer = byId("composer", HTMLFormElement);
  const shown = byId("recorded", HTMLOutputElement);
  /** @type {MediaRecorder | undefined} */
  let recorder;
  let keep = false;

  /** @param {boolean} is */
  const show = (is) => {
    bar.hidden = !is;
    composer.hidden = is;
    (is ? byId("record-send", HTMLButtonElement) : start).focus();
  };

  /** @param {MediaStream} stream */
  const run = (stream) => {
    const begun = performance.now();
    const seconds = () => (performance.now() - begun) / 1000;
    /** @type {Blob[]} */
    const parts = [];
    const running = new MediaRecorder(stream, { mimeType: found.type, audioBitsPerSecond: 32_000 });
    const beat = setInterval(() => {
      shown.textContent = span(seconds());
      if (seconds() > LONGEST_SECONDS) end(true);
    }, 250);
    running.addEventListener("dataavailable", ({ data }) => void parts.push(data));
    running.addEventListener("stop", () => {
      clearInterval(beat);
      silence(stream);
      show(false);
      const durationSeconds = Math.round(seconds());
      const bytes = new Blob(parts, { type: found.type });
      if (keep && bytes.size > 0) tell.recorded({ name: `voice.${found.ending}`, bytes, durationSeconds });
    });
    shown.textContent = span(0);
    running.start(1000);
    return running;
  };

  /** @param {boolean} send */
  const end = (send) => {
    keep = send;
    if (recorder?.state === "recording") recorder.stop();
  };

  start.hidden = false;
  start.addEventListener("click", async () => {
    try {
      recorder = run(await navigator.mediaDevices.getUserMedia({ audio: true }));
      show(true);
    } catch {
      tell.notice("The microphone cannot be used. Allow it for this page, or add a recording as a file.");
    }
  });
  byId("record-send", HTMLButtonElement).addEventListener("click", () => end(true));
  byId("record-cancel", HTMLButtonElement).addEventListener("click", () => end(false));
  bar.addEventListener("keydown", ({ key }) => {
    if (key === "Escape") end(false);
  });
};
