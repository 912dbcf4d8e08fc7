import { Popover } from 'radix-ui';
import { type KeyboardEvent, type MouseEvent, useLayoutEffect, useRef, useState } from 'react';
import type { NumberAsked } from '../engine/why-views.ts';
import { openingAfter, openingsIn } from './opening-keys.ts';
import { Asked, WhySheet } from './why.tsx';

/**
 * A sheet the documents set, whose numbers open. Of all numbers of one table or list one is a stop of the Tab key; the
 * arrow keys go on from it to the others.
 */
export function OpeningMarkup({
  markup,
  className,
  asked,
}: {
  readonly markup: string;
  readonly className?: string;
  /** The number of that place on the sheet. */
  readonly asked: (place: number) => NumberAsked;
}) {
  const box = useRef<HTMLDivElement>(null);
  const from = useRef<HTMLElement | null>(null);
  const [place, setPlace] = useState<number>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the numbers are those of the markup
  useLayoutEffect(() => {
    for (const group of openingsIn(box.current!)) {
      for (const [index, each] of group.entries()) each.tabIndex = index === 0 ? 0 : -1;
    }
  }, [markup]);
  const opened = (event: MouseEvent) => {
    const button = (event.target as Element).closest<HTMLElement>('button[data-opens]');
    if (button === null) return;
    from.current = button;
    setPlace(Number(button.dataset.opens));
  };
  const pressed = (event: KeyboardEvent) => {
    const button = (event.target as Element).closest<HTMLElement>('button[data-opens]');
    const next =
      button === null || event.altKey || event.ctrlKey ? undefined : openingAfter(event.key, button, box.current!);
    if (button === null || next === undefined) return;
    event.preventDefault();
    button.tabIndex = -1;
    next.tabIndex = 0;
    next.focus();
  };
  return (
    <Popover.Root open={place !== undefined} onOpenChange={(open) => (open ? undefined : setPlace(undefined))}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the numbers in the markup are buttons; what they do stands here */}
      <div
        ref={box}
        className={className}
        onClick={opened}
        onKeyDown={pressed}
        // biome-ignore lint/security/noDangerouslySetInnerHtml: made by our own typesetting, which escapes what is not its own
        dangerouslySetInnerHTML={{ __html: markup }}
      />
      <Popover.Anchor virtualRef={from as { current: HTMLElement }} />
      <WhySheet
        label="Why this number"
        onCloseAutoFocus={(event) => {
          event.preventDefault();
          from.current?.focus();
        }}
      >
        {place === undefined ? undefined : <Asked asked={asked(place)} />}
      </WhySheet>
    </Popover.Root>
  );
}
