import { useState } from 'react';
import { useLocation } from 'wouter';
import { machineAddress } from '../app/address.ts';
import { AddingForm, AskedText } from '../machine/adding-form.tsx';
import { SheetDialog } from './sheet-dialog.tsx';

/** Adds a machine with its first shaft; its page then opens, where the train is built. */
export function MachineAdding({ close }: { readonly close: () => void }) {
  const [, navigate] = useLocation();
  const [name, setName] = useState('');
  const [title, setTitle] = useState('');
  const [shaft, setShaft] = useState('');
  return (
    <SheetDialog title="Add a machine" close={close}>
      <div className="dialog-body">
        <p className="quiet">
          A machine begins with its tag, what it is, and one shaft that turns. Its elements, its speed and its points
          are added on its own page.
        </p>
        <AddingForm
          name="Add a machine"
          does="Add the machine"
          asked={() => ({ act: 'add machine', name, title, shaft })}
          done={() => {
            close();
            navigate(machineAddress(name.trim()));
          }}
        >
          <AskedText of="Tag" value={name} change={setName} example="P-301" />
          <AskedText of="What it is" value={title} change={setTitle} example="Raw-water pump" />
          <AskedText of="Its first shaft" value={shaft} change={setShaft} example="motor" />
        </AddingForm>
      </div>
    </SheetDialog>
  );
}
