import { type ReactNode, useEffect, useId, useRef } from 'react';
import { createPortal } from 'react-dom';
import '../style/dialog.css';

/** A sheet laid over the view until it is decided on; the browser keeps the keyboard inside and gives Escape. */
export function SheetDialog(props: {
  readonly title: string;
  readonly close: () => void;
  readonly children: ReactNode;
}) {
  const { title, close, children } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useId();
  useEffect(() => {
    const before = document.activeElement;
    dialog.current?.showModal();
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  // Not in a cell or a line of the view: there it would be set as small and as narrow as that.
  return createPortal(
    <dialog
      ref={dialog}
      className="sheet-dialog"
      aria-labelledby={heading}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
    >
      <header>
        <h2 id={heading}>{title}</h2>
        <button type="button" onClick={close}>
          Close
        </button>
      </header>
      {children}
    </dialog>,
    document.body,
  );
}
