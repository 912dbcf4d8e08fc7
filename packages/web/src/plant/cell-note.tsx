import { type ReactNode, useLayoutEffect, useRef } from 'react';

/** Something said at a cell, above all boxes that scroll: the browser's top layer, placed under the cell or over it. */
export function CellNote(props: {
  readonly id: string;
  readonly cell: HTMLElement | null;
  readonly className: string;
  readonly children: ReactNode;
}) {
  const { id, cell, className, children } = props;
  const note = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = note.current;
    if (element === null || cell === null) return;
    const place = () => {
      const box = cell.getBoundingClientRect();
      const width = Math.min(Math.max(box.width, 300), window.innerWidth - 16);
      const below = window.innerHeight - box.bottom > 240 || box.top < 240;
      element.style.left = `${Math.max(8, Math.min(box.left, window.innerWidth - width - 8))}px`;
      element.style.width = `${width}px`;
      element.style.top = below ? `${box.bottom + 2}px` : 'auto';
      element.style.bottom = below ? 'auto' : `${window.innerHeight - box.top + 2}px`;
    };
    element.showPopover();
    place();
    window.addEventListener('scroll', place, { capture: true, passive: true });
    window.addEventListener('resize', place);
    return () => {
      window.removeEventListener('scroll', place, { capture: true });
      window.removeEventListener('resize', place);
    };
  }, [cell]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a press on the note, to scroll it, must not take the focus from the cell
    <div
      ref={note}
      id={id}
      popover="manual"
      className={`cell-note ${className}`}
      onMouseDown={(event) => event.preventDefault()}
    >
      {children}
    </div>
  );
}
