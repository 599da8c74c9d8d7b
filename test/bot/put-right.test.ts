import { expect, it } from "vitest";
import { createDesk } from "../help/desk.ts";

it.each([
  [
    "rebuilt the floor by the door with plywood and brass screws",
    "found the offcut with the stamp on it and it's marine plywood i put there",
    /^Material: plywood and brass screw → brass screw and marine plywood\./,
  ],
  [
    "greased the toilet flush lever with silicone spray",
    "i tell a lie, it was furniture polish i used",
    /^Material: silicone spray → furniture polish\./,
  ],
  [
    "lubed the awning arms with dry lube on the weekend",
    "nah make that wednesday just gone",
    /^Date: .* → yesterday\./,
  ],
])("puts right, after “%s”: %s", (note, word, reply) => {
  const desk = createDesk();
  desk.say(note);
  expect(desk.say(word)[0]).toMatch(reply);
});
