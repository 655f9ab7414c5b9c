package bendline.flight;

/**
 * Everything that decides a flight.
 *
 * @param start how the rig leaves
 * @param rig what flies
 * @param tackle what it draws behind it
 * @param wind over the water
 * @param air density and viscosity
 */
public record Shot(Start start, Rig rig, Tackle tackle, Wind wind, Air air) {

    /**
     * How the rig leaves.
     *
     * @param speedMps 0 to 120
     * @param angleRad above level, −0.5 to π/2
     * @param heightM of the rod tip above the water
     */
    public record Start(double speedMps, double angleRad, double heightM) {
        /** Checks ranges. */
        public Start {
            Amounts.check("launch speed", speedMps, 0.5, 120, "m/s");
            Amounts.check("launch angle", angleRad, -0.5, Math.PI / 2, "rad");
            Amounts.check("launch height", heightM, 0, 60, "m");
        }

        /** The same at another angle. */
        public Start atAngle(double newAngleRad) {
            return new Start(speedMps, newAngleRad, heightM);
        }

        /** The same at another speed. */
        public Start atSpeed(double newSpeedMps) {
            return new Start(newSpeedMps, angleRad, heightM);
        }
    }

    /**
     * What the rig draws behind it.
     *
     * @param line the line
     * @param spool it runs off
     * @param loss how many times the pull that the line's own mass needs is lost at spool, lip and rings; 0 for none
     * @param clipM line after which the clip holds it, metres from the tip; infinite for none
     */
    public record Tackle(Line line, Spool spool, double loss, double clipM) {
        /** Checks ranges. */
        public Tackle {
            Amounts.check("loss", loss, 0, 200, "");
            if (!(clipM >= 5)) {
                throw new IllegalArgumentException("clip at " + clipM + " m is nearer than 5 m");
            }
        }

        /** No line. */
        public static final Tackle NONE = new Tackle(Line.NONE, Spool.USUAL, 0, Double.POSITIVE_INFINITY);

        /** The same with another loss. */
        public Tackle withLoss(double newLoss) {
            return new Tackle(line, spool, newLoss, clipM);
        }

        /** The same with another line. */
        public Tackle withLine(Line newLine) {
            return new Tackle(newLine, spool, loss, clipM);
        }

        /** The same, clipped up elsewhere; infinite for no clip. */
        public Tackle clippedAt(double newClipM) {
            return new Tackle(line, spool, loss, newClipM);
        }
    }

    /** The same with another start. */
    public Shot with(Start newStart) {
        return new Shot(newStart, rig, tackle, wind, air);
    }

    /** The same with another rig. */
    public Shot with(Rig newRig) {
        return new Shot(start, newRig, tackle, wind, air);
    }

    /** The same with other tackle. */
    public Shot with(Tackle newTackle) {
        return new Shot(start, rig, newTackle, wind, air);
    }

    /** The same in another wind. */
    public Shot with(Wind newWind) {
        return new Shot(start, rig, tackle, newWind, air);
    }
}
