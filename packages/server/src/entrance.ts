import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

const secret = (): string => randomBytes(32).toString('base64url');
const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
const same = (one: Buffer, text: string): boolean => timingSafeEqual(one, digest(text));

/** Who may come in: whoever brings a token that was printed and never used, and then whoever has the cookie for it. */
export class Entrance {
  readonly #tokens = new Set<Buffer>();
  readonly #sessions: Buffer[] = [];

  /** A new token, good for one entry; the one before it is good no longer. */
  newToken(): string {
    const token = secret();
    this.#tokens.clear();
    this.#tokens.add(digest(token));
    return token;
  }

  /** A new session for a token, which is used up; undefined for one that is not good. */
  enter(token: string): string | undefined {
    for (const each of this.#tokens) {
      if (!same(each, token)) continue;
      this.#tokens.delete(each);
      const session = secret();
      this.#sessions.push(digest(session));
      return session;
    }
    return undefined;
  }

  knows(session: string | undefined): boolean {
    return session !== undefined && this.#sessions.some((each) => same(each, session));
  }
}
