import { Popover } from 'radix-ui';
import type { ReactNode } from 'react';
import '../style/help.css';

/** One or two sentences where the question arises, opened by whoever has it. `of` completes 'What is meant by …'. */
export function Help({ of, children }: { readonly of: string; readonly children: ReactNode }) {
  return (
    <Popover.Root>
      <Popover.Trigger asChild>
        <button type="button" className="help" aria-label={`What is meant by ${of}`}>
          ?
        </button>
      </Popover.Trigger>
      <Popover.Content className="help-words" side="top" sideOffset={4} collisionPadding={12}>
        {children}
        <Popover.Arrow className="help-arrow" width={12} height={6} />
      </Popover.Content>
    </Popover.Root>
  );
}
