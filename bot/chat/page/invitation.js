// @ts-check

/**
 * What the address brought along after its #: a one-time code to say, or the secret of somebody who goes on here.
 * It is taken out of the address at once, so that it is neither kept in the history nor said twice.
 * @returns {{ code?: string, as?: string }}
 */
export const invitation = () => {
  const given = new URLSearchParams(location.hash.slice(1));
  const code = given.get("code");
  const as = given.get("as");
  if (code !== null || as !== null) history.replaceState(null, "", location.pathname);
  return {
    ...(code !== null && /^[\w-]{1,64}$/.test(code) && { code }),
    ...(as !== null && { as }),
  };
};
