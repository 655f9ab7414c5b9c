package bendline.body;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.tensorflowlite.BuiltinOpResolver;
import org.bytedeco.tensorflowlite.FlatBufferModel;
import org.bytedeco.tensorflowlite.Interpreter;
import org.bytedeco.tensorflowlite.InterpreterBuilder;
import org.bytedeco.tensorflowlite.global.tensorflowlite;

/**
 * One neural network that ships with the program, ready to run on one thread. Owns native memory: close it. Not thread-safe.
 */
final class Network implements AutoCloseable {

    private final BytePointer file;
    private final FlatBufferModel model;
    private final BuiltinOpResolver resolver;
    private final Interpreter interpreter;

    /**
     * Reads a network from beside this class.
     *
     * @param name file name in the folder {@code models}
     */
    Network(String name) {
        byte[] bytes = bytes(name);
        this.file = new BytePointer(bytes.length);
        file.put(bytes);
        this.model = FlatBufferModel.BuildFromBuffer(file, bytes.length);
        this.resolver = new BuiltinOpResolver();
        this.interpreter = new Interpreter((org.bytedeco.javacpp.Pointer) null);
        try (InterpreterBuilder builder = new InterpreterBuilder(model, resolver)) {
            builder.SetNumThreads(1);
            check(builder.apply(interpreter), name);
        }
        check(interpreter.AllocateTensors(), name);
    }

    private static void check(int status, String name) {
        if (status != tensorflowlite.kTfLiteOk) {
            throw new IllegalStateException("the network " + name + " of this program cannot be run");
        }
    }

    private static byte[] bytes(String name) {
        try (InputStream in = Network.class.getResourceAsStream("models/" + name)) {
            if (in == null) {
                throw new IllegalStateException("the network " + name + " is missing from the program");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Puts values in and computes. */
    void run(float[] input) {
        interpreter.typed_input_tensor_float(0).put(input);
        check(interpreter.Invoke(), "in use");
    }

    /** Reads an output of the last run. */
    void read(int output, float[] into) {
        interpreter.typed_output_tensor_float(output).get(into);
    }

    @Override
    public void close() {
        interpreter.close();
        resolver.close();
        model.close();
        file.close();
    }
}
