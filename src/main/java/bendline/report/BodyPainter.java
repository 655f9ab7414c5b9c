package bendline.report;

import bendline.body.BodySight;
import bendline.body.BodyTrace;
import bendline.body.Joint;
import bendline.body.JointSight;
import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.util.List;

/** Draws the caster's body over a frame as a stick figure: whole lines where both joints were seen, dashes where one is guessed. */
final class BodyPainter {

    private record Bone(Joint from, Joint to) {}

    private static final List<Bone> BONES = List.of(
            new Bone(Joint.LEFT_SHOULDER, Joint.RIGHT_SHOULDER),
            new Bone(Joint.LEFT_HIP, Joint.RIGHT_HIP),
            new Bone(Joint.LEFT_SHOULDER, Joint.LEFT_HIP),
            new Bone(Joint.RIGHT_SHOULDER, Joint.RIGHT_HIP),
            new Bone(Joint.LEFT_SHOULDER, Joint.LEFT_ELBOW),
            new Bone(Joint.RIGHT_SHOULDER, Joint.RIGHT_ELBOW),
            new Bone(Joint.LEFT_ELBOW, Joint.LEFT_WRIST),
            new Bone(Joint.RIGHT_ELBOW, Joint.RIGHT_WRIST),
            new Bone(Joint.LEFT_HIP, Joint.LEFT_KNEE),
            new Bone(Joint.RIGHT_HIP, Joint.RIGHT_KNEE),
            new Bone(Joint.LEFT_KNEE, Joint.LEFT_ANKLE),
            new Bone(Joint.RIGHT_KNEE, Joint.RIGHT_ANKLE));

    private final BodyTrace body;
    private final CameraMotion motion;

    BodyPainter(BodyTrace body, CameraMotion motion) {
        this.body = body;
        this.motion = motion;
    }

    /**
     * Draws in picture pixels, nothing where the body was not followed.
     *
     * @param line width of the thinnest line in picture pixels
     */
    void paint(Graphics2D g, int frame, double line) {
        BodySight sight = body.at(frame);
        if (sight == null) {
            return;
        }
        for (Bone bone : BONES) {
            JointSight a = sight.joint(bone.from());
            JointSight b = sight.joint(bone.to());
            bone(g, at(frame, a), at(frame, b), a.shows() && b.shows(), line);
        }
        for (Joint j : Joint.values()) {
            JointSight s = sight.joint(j);
            if (s.shows()) {
                dot(g, at(frame, s), line);
            }
        }
    }

    private Point at(int frame, JointSight s) {
        return motion.toPicture(frame, s.place());
    }

    private static void bone(Graphics2D g, Point a, Point b, boolean seen, double line) {
        Line2D shape = new Line2D.Double(a.x(), a.y(), b.x(), b.y());
        g.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, 0.5f));
        g.setColor(PictureColours.CASING);
        g.setStroke(pen(2.4 * line, seen, line));
        g.draw(shape);
        g.setComposite(AlphaComposite.SrcOver);
        g.setColor(PictureColours.LETTERS);
        g.setStroke(pen(line, seen, line));
        g.draw(shape);
    }

    private static BasicStroke pen(double width, boolean whole, double line) {
        float dash = (float) (3.5 * line);
        return whole
                ? new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
                : new BasicStroke(
                        (float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {dash, dash}, 0);
    }

    private static void dot(Graphics2D g, Point p, double line) {
        g.setColor(PictureColours.CASING);
        g.fill(circle(p, 2.3 * line));
        g.setColor(PictureColours.LETTERS);
        g.fill(circle(p, 1.5 * line));
    }

    private static Ellipse2D circle(Point p, double radius) {
        return new Ellipse2D.Double(p.x() - radius, p.y() - radius, 2 * radius, 2 * radius);
    }
}
