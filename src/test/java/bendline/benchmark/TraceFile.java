package bendline.benchmark;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Keeps a trace on disk, so that what reads traces can be worked on without following the rod again. */
final class TraceFile {

    private TraceFile() {}

    static void write(Trace trace, Path file) throws IOException {
        try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file)))) {
            out.writeInt(trace.width());
            out.writeInt(trace.height());
            out.writeDouble(trace.freeLengthPx());
            out.writeDouble(trace.freeLengthSdPx());
            String trouble = trace.trouble();
            out.writeUTF(trouble == null ? "" : trouble);
            out.writeDouble(trace.motion().largestShiftPx());
            out.writeBoolean(trace.motion().trusted());
            out.writeInt(trace.frames().size());
            for (int i = 0; i < trace.frames().size(); i++) {
                write(trace.motion().toReference().get(i), out);
                write(trace.frames().get(i), out);
            }
        }
    }

    static Trace read(Path file) throws IOException {
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
            int width = in.readInt();
            int height = in.readInt();
            double length = in.readDouble();
            double lengthSd = in.readDouble();
            String trouble = in.readUTF();
            double shift = in.readDouble();
            boolean trusted = in.readBoolean();
            int n = in.readInt();
            List<FrameTrace> frames = new ArrayList<>();
            List<Homography> maps = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                maps.add(homography(in));
                frames.add(frame(in));
            }
            return new Trace(
                    width,
                    height,
                    frames,
                    new CameraMotion(maps, shift, trusted),
                    length,
                    lengthSd,
                    trouble.isEmpty() ? null : trouble);
        }
    }

    private static void write(Homography h, DataOutputStream out) throws IOException {
        for (double v : new double[] {h.a(), h.b(), h.c(), h.d(), h.e(), h.f(), h.g(), h.h()}) {
            out.writeDouble(v);
        }
    }

    private static Homography homography(DataInputStream in) throws IOException {
        double[] v = new double[8];
        for (int i = 0; i < v.length; i++) {
            v[i] = in.readDouble();
        }
        return new Homography(v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7]);
    }

    private static void write(FrameTrace f, DataOutputStream out) throws IOException {
        out.writeInt(f.frame());
        out.writeDouble(f.seconds());
        write(f.grip(), out);
        write(f.tip(), out);
        write(f.rig(), out);
        Polyline blank = f.blank();
        out.writeInt(blank == null ? 0 : blank.points().size());
        if (blank != null) {
            for (Point p : blank.points()) {
                write(p, out);
            }
        }
        out.writeDouble(f.buttAngleSd());
        out.writeDouble(f.acrossSdPx());
    }

    private static FrameTrace frame(DataInputStream in) throws IOException {
        int number = in.readInt();
        double seconds = in.readDouble();
        Tracked grip = tracked(in);
        Tracked tip = tracked(in);
        Tracked rig = tracked(in);
        int points = in.readInt();
        List<Point> blank = new ArrayList<>();
        for (int i = 0; i < points; i++) {
            blank.add(point(in));
        }
        return new FrameTrace(
                number,
                seconds,
                grip,
                tip,
                rig,
                points == 0 ? null : new Polyline(blank),
                in.readDouble(),
                in.readDouble());
    }

    private static void write(Tracked t, DataOutputStream out) throws IOException {
        Point p = t.position();
        out.writeBoolean(p != null);
        if (p != null) {
            write(p, out);
        }
        out.writeDouble(t.sdPx());
        out.writeBoolean(t.seen());
        out.writeUTF(t.reason());
    }

    private static Tracked tracked(DataInputStream in) throws IOException {
        @Nullable Point p = in.readBoolean() ? point(in) : null;
        return new Tracked(p, in.readDouble(), in.readBoolean(), in.readUTF());
    }

    private static void write(Point p, DataOutputStream out) throws IOException {
        out.writeDouble(p.x());
        out.writeDouble(p.y());
    }

    private static Point point(DataInputStream in) throws IOException {
        return new Point(in.readDouble(), in.readDouble());
    }
}
