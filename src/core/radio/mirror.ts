import { type Complex, complex } from '../units/complex';
import { fresnelCoefficient } from './ground';
import { across, addFields, along, cross, dot, type Field, fieldAlong, minus, partAlong, turnField, unit, type Vector } from './waveVector';

/**
 * Field after a mirror: R_h on the part along the surface and across the plane of incidence, R_v on the part in that plane
 * (the dyad R_h ss + R_v p_r p_i). `travel` is the unit direction of the incoming wave, `normal` points to the lit side.
 * `eps` undefined is metal.
 */
export function mirrored(incident: Field, travel: Vector, normal: Vector, eps: Complex | undefined): Field {
  const sine = Math.min(1, Math.max(1e-3, -dot(travel, normal)));
  const sideways = cross(travel, normal);
  const s = sine > 0.99999 ? unit(across([0.6, 0.8, 0], normal)) : unit(sideways);
  const out = minus(travel, along(normal, 2 * dot(travel, normal)));
  const pIn = cross(s, travel);
  const pOut = cross(s, out);
  const h = eps ? fresnelCoefficient(eps, 'h', sine) : complex(-1);
  const v = eps ? fresnelCoefficient(eps, 'v', sine) : complex(1);
  // p vectors both have their normal part of the same sign for V = +1 over metal
  const sign = Math.sign(dot(pIn, normal) * dot(pOut, normal)) || 1;
  return addFields(
    turnField(fieldAlong(s, partAlong(incident, s)), h),
    turnField(fieldAlong(along(pOut, sign), partAlong(incident, pIn)), v),
  );
}
