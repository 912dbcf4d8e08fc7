import { Broken } from '../../quantity/index.ts';

/** How many channels must stand above their set point before the alarm acts: k out of n. */
export interface Voting {
  readonly name: string;
  readonly needs: number;
  readonly of: number;
}

export const votings = [
  { name: '1oo1', needs: 1, of: 1 },
  { name: '1oo2', needs: 1, of: 2 },
  { name: '2oo2', needs: 2, of: 2 },
  { name: '2oo3', needs: 2, of: 3 },
] as const satisfies readonly Voting[];
export type VotingName = (typeof votings)[number]['name'];
export const votingNames = votings.map((each) => each.name) as unknown as readonly [VotingName, ...VotingName[]];

export function votingCalled(name: VotingName): Voting {
  return votings.find((each) => each.name === name)!;
}

/** What a channel says: below or above its set point, or that it can say nothing. */
export const channelStates = ['below', 'above', 'not-ok'] as const;
export type ChannelState = (typeof channelStates)[number];

/**
 * What a channel that is not OK counts for. `no vote`: a broken wire trips nothing. `vote`: it counts as above, so a
 * fault can stop the machine. `degrade`: it leaves the vote, and as many fewer are needed, one at least.
 */
export const faultActions = ['no vote', 'vote', 'degrade'] as const;
export type FaultAction = (typeof faultActions)[number];

export interface Vote {
  /** Whether the alarm would act, once its delay has passed. */
  readonly holds: boolean;
  /** Channels that are not OK: told as a fault, whatever the vote says. */
  readonly faults: number;
  /** Whether no reading of the channels that are left can make it act. */
  readonly blind: boolean;
}

/** The vote of these channels; there must be as many as the voting has. */
export function vote(voting: Voting, channels: readonly ChannelState[], whenNotOk: FaultAction): Vote {
  if (channels.length !== voting.of) {
    throw new Broken('a vote has the channels of its voting', { voting: voting.name, channels: channels.length });
  }
  const faults = channels.filter((each) => each === 'not-ok').length;
  const above = channels.filter((each) => each === 'above').length;
  const sound = voting.of - faults;
  const needs = whenNotOk === 'degrade' ? Math.max(1, voting.needs - faults) : voting.needs;
  const counted = whenNotOk === 'vote' ? above + faults : above;
  const most = whenNotOk === 'vote' ? voting.of : sound;
  return { holds: counted >= needs, faults, blind: most < needs };
}
