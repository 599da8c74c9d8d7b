/** One step of the schema. Ids count up from 1 without gaps; a landed migration is never edited. */
export type Migration = { readonly id: number; readonly name: string; readonly up: string };
