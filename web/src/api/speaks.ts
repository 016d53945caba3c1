// Which calls answer with texts, and so are told in which units and language: those whose entry in
// docs/formats/openapi.json has the parameter `units` (client_test.ts holds this list to it).

const of_closing = "^/api/closings/[^/]+";
const speaking: readonly (readonly [method: string, path: RegExp])[] = [
  ["GET", /^\/api\/(people|plant)$/],
  ["GET", new RegExp(`${of_closing}(/(facts|outstanding|drawing[.]svg|papers/[^/]+|record[.]pdf|sheet|gauge|repair))?$`)],
  ["POST", new RegExp(`${of_closing}/(clearances|sheet|traces)$`)],
];

export function speaks(method: string, path: string): boolean {
  return speaking.some(([how, where]) => how === method && where.test(path));
}
