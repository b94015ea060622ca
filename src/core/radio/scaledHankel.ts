/** H0(2)(z) exp(jz) and H1(2)(z) exp(jz): re, im of each. */
export type ScaledHankel = { h0Re: number; h0Im: number; h1Re: number; h1Im: number };

/** From this size on Hankel's asymptotic series is better than 1e-7. */
const FAR = 14;

/**
 * Hankel functions of the second kind with their exponential taken out, for complex z with |z| >= 1.5 away from the positive
 * imaginary axis. Writes into `out`, so that a quadrature allocates nothing.
 */
export function scaledHankel(zRe: number, zIm: number, out: ScaledHankel): void {
  if (Math.hypot(zRe, zIm) > FAR) farHankel(zRe, zIm, out);
  else nearHankel(zRe, zIm, out);
}

/** sqrt(2j/(pi z)) times a series in 1/z. @source H. Hankel's asymptotic expansion, any table of functions */
function farHankel(zRe: number, zIm: number, out: ScaledHankel): void {
  const size = zRe * zRe + zIm * zIm;
  // 1/(8jz)
  const [tRe, tIm] = [-zIm / (8 * size), -zRe / (8 * size)];
  const series = (mu: number): [number, number] => {
    let [re, im, partRe, partIm] = [1, 0, 1, 0];
    for (let m = 1; m <= 8; m++) {
      const by = (mu - (2 * m - 1) ** 2) / m;
      const next = by * (partRe * tRe - partIm * tIm);
      partIm = by * (partRe * tIm + partIm * tRe);
      partRe = next;
      re += partRe;
      im += partIm;
    }
    return [re, im];
  };
  const [rootRe, rootIm] = rootOf((2 * zIm) / (Math.PI * size), (2 * zRe) / (Math.PI * size));
  const [p, q] = series(0);
  const [r, s] = series(4);
  out.h0Re = rootRe * p - rootIm * q;
  out.h0Im = rootRe * q + rootIm * p;
  // the first order turns by j more
  out.h1Re = -(rootRe * s + rootIm * r);
  out.h1Im = rootRe * r - rootIm * s;
}

/** K0 and K1 of w = jz by Steed's continued fraction. @source N. M. Temme, J. Comput. Phys. 19 (1975) 324-337 */
function nearHankel(zRe: number, zIm: number, out: ScaledHankel): void {
  const [wRe, wIm] = [-zIm, zRe];
  let [bRe, bIm] = [2 * (1 + wRe), 2 * wIm];
  let size = bRe * bRe + bIm * bIm;
  let [dRe, dIm] = [bRe / size, -bIm / size];
  let [hRe, hIm, stepRe, stepIm] = [dRe, dIm, dRe, dIm];
  let [q1Re, q1Im, q2Re, q2Im] = [0, 0, 1, 0];
  let [qRe, qIm, c, a] = [0.25, 0, 0.25, -0.25];
  let [sumRe, sumIm] = [1 + 0.25 * dRe, 0.25 * dIm];
  for (let i = 2; i < 300; i++) {
    a -= 2 * (i - 1);
    c *= -a / i;
    const nextRe = (q1Re - (bRe * q2Re - bIm * q2Im)) / a;
    const nextIm = (q1Im - (bRe * q2Im + bIm * q2Re)) / a;
    [q1Re, q1Im, q2Re, q2Im] = [q2Re, q2Im, nextRe, nextIm];
    qRe += c * nextRe;
    qIm += c * nextIm;
    bRe += 2;
    const [eRe, eIm] = [bRe + a * dRe, bIm + a * dIm];
    size = eRe * eRe + eIm * eIm;
    dRe = eRe / size;
    dIm = -eIm / size;
    const [gRe, gIm] = [bRe * dRe - bIm * dIm - 1, bRe * dIm + bIm * dRe];
    [stepRe, stepIm] = [gRe * stepRe - gIm * stepIm, gRe * stepIm + gIm * stepRe];
    hRe += stepRe;
    hIm += stepIm;
    const [partRe, partIm] = [qRe * stepRe - qIm * stepIm, qRe * stepIm + qIm * stepRe];
    sumRe += partRe;
    sumIm += partIm;
    if (partRe * partRe + partIm * partIm < 1e-14 * (sumRe * sumRe + sumIm * sumIm)) break;
  }
  const w2 = wRe * wRe + wIm * wIm;
  const [rootRe, rootIm] = rootOf((Math.PI * wRe) / (2 * w2), (-Math.PI * wIm) / (2 * w2));
  size = sumRe * sumRe + sumIm * sumIm;
  const [k0Re, k0Im] = [(rootRe * sumRe + rootIm * sumIm) / size, (rootIm * sumRe - rootRe * sumIm) / size];
  const [mRe, mIm] = [wRe + 0.5 - 0.25 * hRe, wIm - 0.25 * hIm];
  const [nRe, nIm] = [(mRe * wRe + mIm * wIm) / w2, (mIm * wRe - mRe * wIm) / w2];
  const by = 2 / Math.PI;
  out.h0Re = -by * k0Im;
  out.h0Im = by * k0Re;
  out.h1Re = -by * (k0Re * nRe - k0Im * nIm);
  out.h1Im = -by * (k0Re * nIm + k0Im * nRe);
}

/** Principal square root. */
export function rootOf(re: number, im: number): [number, number] {
  const r = Math.hypot(re, im);
  const root = Math.sqrt((r + re) / 2);
  const rest = Math.sqrt(Math.max(0, (r - re) / 2));
  return [root, im < 0 ? -rest : rest];
}
