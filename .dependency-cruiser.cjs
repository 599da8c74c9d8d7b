const room = (name) => `^${name}/`;

/** The arrows between the rooms: bot → nlp, store → shared. */
module.exports = {
  forbidden: [
    {
      name: "shared-imports-no-room",
      severity: "error",
      from: { path: room("shared") },
      to: { path: "^(bot|nlp|store|test)/" },
    },
    {
      name: "nlp-imports-shared-only",
      severity: "error",
      from: { path: room("nlp") },
      to: { path: "^(bot|store|test)/" },
    },
    {
      name: "store-imports-shared-only",
      severity: "error",
      from: { path: room("store") },
      to: { path: "^(bot|nlp|test)/" },
    },
    { name: "bot-imports-no-test", severity: "error", from: { path: room("bot") }, to: { path: "^test/" } },
    {
      name: "shared-does-no-io",
      severity: "error",
      from: { path: room("shared") },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "reading-does-no-io",
      severity: "error",
      from: { path: "^nlp/", pathNot: "^nlp/(hear|speech-model)/" },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "only-store-knows-sqlite",
      severity: "error",
      from: { pathNot: "^(store|test)/" },
      to: { path: "better-sqlite3" },
    },
    { name: "no-circles", severity: "error", from: {}, to: { circular: true } },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
  },
};
