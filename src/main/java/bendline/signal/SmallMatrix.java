package bendline.signal;

/** Arithmetic of small dense matrices, {@code [row][column]}; plain loops, since a filter does millions of them. */
final class SmallMatrix {

    private SmallMatrix() {}

    static double[][] diagonal(double[] d) {
        double[][] out = new double[d.length][d.length];
        for (int i = 0; i < d.length; i++) {
            out[i][i] = d[i];
        }
        return out;
    }

    static double[] times(double[][] a, double[] x) {
        double[] out = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < x.length; j++) {
                out[i] += a[i][j] * x[j];
            }
        }
        return out;
    }

    static double[][] times(double[][] a, double[][] b) {
        double[][] out = new double[a.length][b[0].length];
        for (int i = 0; i < a.length; i++) {
            for (int k = 0; k < b.length; k++) {
                double x = a[i][k];
                for (int j = 0; j < out[i].length; j++) {
                    out[i][j] += x * b[k][j];
                }
            }
        }
        return out;
    }

    /** a · bᵀ. */
    static double[][] timesTransposed(double[][] a, double[][] b) {
        double[][] out = new double[a.length][b.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < b.length; j++) {
                for (int k = 0; k < b[j].length; k++) {
                    out[i][j] += a[i][k] * b[j][k];
                }
            }
        }
        return out;
    }

    /** f · p · fᵀ. */
    static double[][] sandwich(double[][] f, double[][] p) {
        return timesTransposed(times(f, p), f);
    }

    static double[][] plusScaled(double[][] a, double[][] b, double factor) {
        double[][] out = new double[a.length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a.length; j++) {
                out[i][j] = a[i][j] + factor * b[i][j];
            }
        }
        return out;
    }

    static double[] plus(double[] a, double[] b) {
        double[] out = a.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] += b[i];
        }
        return out;
    }

    static double[] minus(double[] a, double[] b) {
        double[] out = a.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] -= b[i];
        }
        return out;
    }

    /** Covariance after a measurement of the first component, in the form that stays positive when rounded. */
    static double[][] josephUpdate(double[][] p, double[] gain, double variance) {
        double[][] keep = diagonal(new double[p.length]);
        for (int i = 0; i < p.length; i++) {
            keep[i][i] = 1;
            keep[i][0] -= gain[i];
        }
        double[][] out = sandwich(keep, p);
        for (int i = 0; i < p.length; i++) {
            for (int j = 0; j < p.length; j++) {
                out[i][j] += gain[i] * variance * gain[j];
            }
        }
        return out;
    }

    /** Lower factor of a symmetric positive matrix; a pivot lost to rounding counts as zero. */
    static double[][] cholesky(double[][] a) {
        int n = a.length;
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                if (i == j) {
                    l[i][i] = Math.sqrt(Math.max(0, sum));
                } else {
                    l[i][j] = l[j][j] > 0 ? sum / l[j][j] : 0;
                }
            }
        }
        return l;
    }

    /** Inverse of a symmetric positive matrix, scaled to unit diagonal first since its components differ by many orders. */
    static double[][] inverseSymmetric(double[][] a) {
        int n = a.length;
        double[] s = new double[n];
        double[][] scaled = new double[n][n];
        for (int i = 0; i < n; i++) {
            s[i] = 1 / Math.sqrt(a[i][i]);
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                scaled[i][j] = a[i][j] * s[i] * s[j];
            }
        }
        double[][] l = cholesky(scaled);
        double[][] out = new double[n][n];
        for (int c = 0; c < n; c++) {
            double[] column = solve(l, c);
            for (int r = 0; r < n; r++) {
                out[r][c] = column[r] * s[r] * s[c];
            }
        }
        return out;
    }

    private static double[] solve(double[][] l, int unit) {
        int n = l.length;
        double[] z = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = i == unit ? 1 : 0;
            for (int k = 0; k < i; k++) {
                sum -= l[i][k] * z[k];
            }
            z[i] = sum / l[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = z[i];
            for (int k = i + 1; k < n; k++) {
                sum -= l[k][i] * z[k];
            }
            z[i] = sum / l[i][i];
        }
        return z;
    }
}
