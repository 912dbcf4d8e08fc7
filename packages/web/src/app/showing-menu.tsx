import { DropdownMenu } from 'radix-ui';
import { usePlantState, usePlantStore } from './plant-context.tsx';

/** Units, decimal sign and detector, for every view at once. */
export function ShowingMenu() {
  const { showing } = usePlantState();
  const store = usePlantStore();
  return (
    <DropdownMenu.Root modal={false}>
      <DropdownMenu.Trigger asChild>
        <button type="button">{showing.units === 'us' ? 'US units' : 'Metric units'}</button>
      </DropdownMenu.Trigger>
      <DropdownMenu.Content className="menu" align="end" sideOffset={4}>
        <DropdownMenu.Label>Units</DropdownMenu.Label>
        <DropdownMenu.RadioGroup
          value={showing.units}
          onValueChange={(units) => void store.show({ ...showing, units: units as 'metric' | 'us' })}
        >
          <Choice value="metric">mm/s, µm, °C</Choice>
          <Choice value="us">in/s, mil, °F</Choice>
        </DropdownMenu.RadioGroup>
        <DropdownMenu.Label>Decimal sign</DropdownMenu.Label>
        <DropdownMenu.RadioGroup
          value={showing.decimal}
          onValueChange={(decimal) => void store.show({ ...showing, decimal: decimal as 'point' | 'comma' })}
        >
          <Choice value="point">3.5</Choice>
          <Choice value="comma">3,5</Choice>
        </DropdownMenu.RadioGroup>
        <DropdownMenu.Label>Detector of amplitudes</DropdownMenu.Label>
        <DropdownMenu.RadioGroup
          value={showing.detector}
          onValueChange={(detector) => void store.show({ ...showing, detector: detector as typeof showing.detector })}
        >
          <Choice value="stated">as stated</Choice>
          <Choice value="rms">rms of a sine</Choice>
          <Choice value="peak">peak of a sine</Choice>
          <Choice value="peak-to-peak">peak to peak of a sine</Choice>
        </DropdownMenu.RadioGroup>
      </DropdownMenu.Content>
    </DropdownMenu.Root>
  );
}

function Choice({ value, children }: { readonly value: string; readonly children: string }) {
  return (
    <DropdownMenu.RadioItem value={value}>
      <DropdownMenu.ItemIndicator>✓ </DropdownMenu.ItemIndicator>
      {children}
    </DropdownMenu.RadioItem>
  );
}
