import type { Outcome as JudgedOutcome, Weight } from '@soundpost/core';

/** Shape first, then the word: both stand wherever an outcome is shown. */
export const outcomeMark: Readonly<Record<JudgedOutcome, string>> = {
  meets: '✓',
  warns: '!',
  'cannot tell': '?',
  fails: '✗',
};

export const weightMark: Readonly<Record<Weight, string>> = {
  'blocks-issue': '✗',
  question: '?',
  warns: '!',
  notes: '·',
};

export const weightWords: Readonly<Record<Weight, string>> = {
  'blocks-issue': 'blocks the issue',
  question: 'question',
  warns: 'warning',
  notes: 'note',
};
