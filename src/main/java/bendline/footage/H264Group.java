package bendline.footage;

import java.io.IOException;
import java.util.Arrays;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;

/** An H.264 encoder for one group of pictures at one quantiser; it never drops a frame. */
final class H264Group implements AutoCloseable {

    private final AVCodecContext context;

    H264Group(int width, int height, ClipWriterSettings settings, int clock, int quantiser) throws IOException {
        AVCodec encoder = avcodec.avcodec_find_encoder_by_name("libopenh264");
        context = avcodec.avcodec_alloc_context3(encoder);
        context.width(width).height(height).pix_fmt(avutil.AV_PIX_FMT_YUV420P);
        AVRational base = new AVRational().num(1).den(clock);
        AVRational rate = new AVRational()
                .num((int) Math.round(settings.nominalRate() * 1000))
                .den(1000);
        context.time_base(base).framerate(rate);
        context.bit_rate(settings.bitsPerSecond()).max_b_frames(0);
        // One more than the frames of a group, so that only its first picture is a key picture.
        context.gop_size(settings.keyframeEvery() + 1).qmin(quantiser).qmax(quantiser);
        context.colorspace(avutil.AVCOL_SPC_BT709).color_primaries(avutil.AVCOL_PRI_BT709);
        context.color_trc(avutil.AVCOL_TRC_BT709).color_range(avutil.AVCOL_RANGE_MPEG);
        context.flags(context.flags() | avcodec.AV_CODEC_FLAG_GLOBAL_HEADER);
        AVDictionary options = new AVDictionary(null);
        avutil.av_dict_set(options, "allow_skip_frames", "0", 0);
        avutil.av_dict_set(options, "rc_mode", "quality", 0);
        try {
            Native.check(avcodec.avcodec_open2(context, encoder, options), "prepare the H.264 encoder");
        } catch (IOException e) {
            avcodec.avcodec_free_context(context);
            throw e;
        } finally {
            avutil.av_dict_free(options);
            base.close();
            rate.close();
        }
    }

    AVCodecContext context() {
        return context;
    }

    /** Whether a stream may go on with pictures of this encoder: the parameter sets in its header are the same. */
    boolean continues(byte[] header) {
        return Arrays.equals(header(), header);
    }

    byte[] header() {
        byte[] bytes = new byte[context.extradata_size()];
        if (bytes.length > 0) {
            context.extradata().get(bytes);
        }
        return bytes;
    }

    @Override
    public void close() {
        avcodec.avcodec_free_context(context);
    }
}
